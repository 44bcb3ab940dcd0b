import { describe, expect, it } from 'vitest';
import { paperLength, pathData } from '../../src/draw/path-data.js';
import type { Drawing, Primitive } from '../../src/draw/primitive.js';
import { svgText } from '../../src/draw/svg.js';

const draw = (...children: Primitive[]): string => {
  const drawing: Drawing = { width: 100, height: 50, label: 'test', children };
  return svgText(drawing, { idPrefix: 'p' }).replace(/^<svg[^>]*>|<\/svg>$/g, '');
};

describe('pathData', () => {
  it('writes short relative steps that end where the line ends', () => {
    expect(
      pathData(
        [
          [
            [1.234, 0],
            [2.234, -3],
            [2.234, 7.5],
          ],
        ],
        false,
      ),
    ).toBe('M1.23 0l1-3v10.5');
    expect(
      pathData(
        [
          [
            [0, 0],
            [1, 0],
            [0, 1],
          ],
        ],
        true,
      ),
    ).toBe('M0 0h1l-1 1z');
  });

  it('does not add up what is rounded', () => {
    const level = Array.from({ length: 1001 }, (_, k) => [k * 0.014, 0] as const);
    const steps = pathData([level], false).split('h')[1].split(' ').map(Number);
    expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(14, 6);
    const slanting = level.map(([x]) => [x, x] as const);
    const pairs = pathData([slanting], false).split('l')[1].split(' ').map(Number);
    expect(pairs.reduce((sum, step) => sum + step, 0)).toBeCloseTo(28, 6);
  });

  it('begins each further line at a step from the end of the last one, or from the start of a closed one', () => {
    const [a, b] = [
      [
        [1, 1],
        [2, 1],
        [2, 3],
      ],
      [
        [5, 5],
        [4, 5],
        [3, 5],
      ],
    ] as const;
    expect(pathData([a, [], b], false)).toBe('M1 1h1v2m3 2h-1-1');
    expect(pathData([a, b], true)).toBe('M1 1h1v2zm4 4h-1-1z');
  });

  it('gives a single point a length of nothing, so that it is seen', () => {
    expect(pathData([[[1, 2]]], false)).toBe('M1 2h0');
    expect(pathData([[]], false)).toBe('');
  });
});

describe('paperLength', () => {
  it('writes two decimals at most and no needless zero', () => {
    expect([0.5, -0.5, 1.005, 12, -0.001, 1e-7].map(paperLength)).toEqual(['.5', '-.5', '1', '12', '0', '0']);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e9])('refuses %s', (mm) => {
    expect(() => paperLength(mm)).toThrow(RangeError);
  });
});

describe('svgText', () => {
  it('is as large as the paper, in millimetres', () => {
    const text = svgText({ width: 277.5, height: 190, label: 'Level <1>', children: [] }, { idPrefix: 'a-1' });
    expect(text).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" width="277.5mm" height="190mm" viewBox="0 0 277.5 190" role="img" ' +
        'aria-label="Level &lt;1&gt;" font-family="sans-serif" fill="none" stroke-miterlimit="8"></svg>',
    );
  });

  it('writes each primitive', () => {
    const style = { stroke: 'ink', strokeWidth: 0.25 } as const;
    expect(draw({ kind: 'rect', at: [1, 2], width: 3, height: 4, corner: 1, style: { fill: 'paper' } })).toBe(
      '<rect x="1" y="2" width="3" height="4" rx="1" fill="var(--plan-paper,Canvas)"/>',
    );
    expect(draw({ kind: 'line', from: [0, 0], to: [1, 1], style })).toBe(
      '<path d="M0 0l1 1" stroke="currentColor" stroke-width=".25"/>',
    );
    expect(
      draw({
        kind: 'polyline',
        lines: [
          [
            [0, 0],
            [1, 1],
          ],
        ],
        style: { dash: [1, 0.5], isRound: true },
      }),
    ).toBe('<path d="M0 0l1 1" stroke-dasharray="1 .5" stroke-linecap="round" stroke-linejoin="round"/>');
    expect(
      draw({
        kind: 'polygon',
        rings: [
          [
            [0, 0],
            [1, 1],
            [0, 1],
          ],
        ],
        style: { fill: '#a0B1c2', fillOpacity: 0.1 },
      }),
    ).toBe('<path d="M0 0l1 1h-1z" fill="#a0B1c2" fill-opacity=".1"/>');
    expect(draw({ kind: 'circle', at: [5, 6], radius: 1, style: { fill: 'mark' } })).toBe(
      '<circle cx="5" cy="6" r="1" fill="var(--plan-mark,currentColor)"/>',
    );
    expect(
      draw({
        kind: 'text',
        items: [{ at: [1, 1], text: 'A' }],
        size: 2,
        anchor: 'middle',
        isBold: true,
        style: { fill: 'ink' },
      }),
    ).toBe('<text x="1" y="1" font-size="2" text-anchor="middle" font-weight="600" fill="currentColor">A</text>');
  });

  it('clips a group to a box and shows a sign at many places', () => {
    expect(draw({ kind: 'group', name: 'plan', clip: { at: [0, 0], width: 9, height: 8 }, children: [] })).toBe(
      '<clipPath id="p1"><rect x="0" y="0" width="9" height="8"/></clipPath><g class="plan" clip-path="url(#p1)"></g>',
    );
    const sign = [{ kind: 'circle', at: [0, 0], radius: 1, style: {} }] as const;
    const text = draw({
      kind: 'marks',
      sign,
      at: [
        [1, 1],
        [2, 3],
      ],
    });
    expect(text).toContain('<path d="M1 1l1 2" marker-mid="url(#p1)" marker-end="url(#p1)" marker-start="url(#p1)"/>');
    expect(draw({ kind: 'marks', sign, at: [] })).toBe('');
  });

  it('escapes all that a text can carry', () => {
    const hostile = `<script>alert("1")</script>&'\u0000\u001b[31m\u2028\u202e\ud800\uffff😀`;
    const text = draw({ kind: 'text', items: [{ at: [0, 0], text: hostile }], size: 2, style: {} });
    expect(text).toBe(
      '<text x="0" y="0" font-size="2">&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&amp;&apos;' +
        '\\u0000\\u001b[31m\\u2028\\u202e\\ud800\\uffff😀</text>',
    );
  });

  it('refuses colours and ids that are none', () => {
    const style = { fill: '#12345"onload="x' } as const;
    expect(() => draw({ kind: 'circle', at: [0, 0], radius: 1, style })).toThrow(RangeError);
    expect(() => svgText({ width: 1, height: 1, label: '', children: [] }, { idPrefix: '"><' })).toThrow(RangeError);
  });
});
