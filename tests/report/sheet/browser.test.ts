import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, vi } from 'vitest';
import { sheetsOf } from '../../../src/jobs/sheet.js';
import { printPdf } from '../../../src/node/print-pdf.js';
import { axe, inChromium, launchChromium, pagesOf } from '../in-chromium.js';
import { es } from '../../../src/report/languages/es.js';
import { sheetWords } from '../../../src/report/languages/es/sheet.js';
import { hole, smallLayout, typeWithSpacing } from '../../jobs/small-layout.js';
import { checkedSheets, layoutOf } from './checked-sheets.js';
import { exampleSource, hostileLayout, packaged, sheetSource } from './sheet-source.js';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
const work = mkdtempSync(join(tmpdir(), 'ahx-sheet-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

const CASES = [
  ['ferry-terminal/sprinkler.ahx.json', 'FP-day-1'],
  ['workshop-deck/workshop.ahx.json', 'shift-2'],
] as const;
/** Points of a PDF. */
const SIZES = { a4: [595, 842], letter: [612, 792] } as const;

/** Texts that go over the edge of their sheet, or over that of the cell of the list to their right. */
const OVERFLOWS = `[...document.querySelectorAll('.sheet svg')].flatMap((svg) => {
  const paper = svg.getBoundingClientRect();
  return [...svg.querySelectorAll('text')].filter((text) => {
    if (text.closest('[clip-path], marker')) return false;
    const box = text.getBoundingClientRect();
    return box.left < paper.left || box.right > paper.right || box.bottom > paper.bottom - 12;
  }).map((text) => text.textContent);
})`;

/** Pairs of texts of a sheet that lie on each other, those of the plan left out. */
const OVERLAPS = `[...document.querySelectorAll('.sheet svg')].flatMap((svg) => {
  const texts = [...svg.querySelectorAll('text')].filter((text) => !text.closest('[clip-path], marker, .north'));
  // Boxes of type are higher than its letters.
  const boxes = texts.map((text) => {
    const { left, right, top, height } = text.getBoundingClientRect();
    return { left, right, top: top + height * 0.25, bottom: top + height * 0.8 };
  });
  return texts.flatMap((text, k) => texts.slice(k + 1).flatMap((other, j) => {
    const [a, b] = [boxes[k], boxes[k + 1 + j]];
    const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
    const isOver = Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && height > 1;
    return isOver ? [text.textContent + ' | ' + other.textContent] : [];
  }));
})`;

describe('crew sheets in Chromium', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = (await launchChromium()) as Browser;
  });
  afterAll(() => browser?.close());

  for (const [path, id] of CASES) {
    for (const paper of ['a4', 'letter'] as const) {
      const set = sheetsOf(exampleSource(path), { package: id }, { paper });
      const page = [...set.html()].join('');

      inChromium(`${id} on ${paper}: are each one page of the PDF, of that size, and say so`, async () => {
        const [html, pdf] = [join(work, `${id}-${paper}.html`), join(work, `${id}-${paper}.pdf`)];
        writeFileSync(html, page);
        printPdf(html, pdf);
        const pages = await pagesOf(pdf);
        expect(pages).toHaveLength(set.sheets.length);
        for (const [k, { width, height, text }] of pages.entries()) {
          expect([Math.round(width), Math.round(height)]).toEqual(SIZES[paper]);
          expect(text).toContain(`Sheet ${k + 1} of ${pages.length}`);
          expect(text).toContain('Not a design, not a permit to drill.');
          for (const { tag } of set.sheets[k].rows) expect(text).toContain(tag);
        }
      });

      inChromium(`${id} on ${paper}: no text leaves its sheet or lies on another one`, async () => {
        const tab = await browser.newPage({ viewport: { width: 1000, height: 1200 } });
        await tab.setContent(page);
        expect(await tab.evaluate(OVERFLOWS)).toEqual([]);
        expect(await tab.evaluate(OVERLAPS)).toEqual([]);
        await tab.close();
      });
    }
  }

  const slab = { ...smallLayout.substrates[0], name: 'Slab over the hall' };
  const close = Array.from({ length: 12 }, (_, k) =>
    hole(`h${k}`, [(k >> 1) * 900 + (k % 2) * 60, 0, k * 3], {
      tag: `C-${k}`,
      note: k === 3 ? 'A note of the office' : undefined,
    }),
  );
  const marked = layoutOf(close, { substrates: [slab], holeTypes: [typeWithSpacing(200)] });
  const before = sheetSource(layoutOf([...close.slice(0, 5), hole('gone', [0, 900, 0])]));
  const ducts = packaged([hole('d', [500, 500, 0])], { id: 'T-2' });
  for (const [name, words] of [
    ['in English', undefined],
    ['in Spanish', sheetWords],
  ] as const)
    for (const paper of ['a4', 'letter'] as const) {
      const options = { language: words && es };
      const set = checkedSheets(marked, { paper, words, parent: before, others: [ducts], options });

      inChromium(`with errors, changes and other trades, ${name} on ${paper}: no text leaves its place`, async () => {
        expect(set.marked.errors).toBe(12);
        const tab = await browser.newPage({ viewport: { width: 1000, height: 1200 } });
        await tab.setContent([...set.html()].join(''));
        expect(await tab.evaluate(OVERFLOWS)).toEqual([]);
        expect(await tab.evaluate(OVERLAPS)).toEqual([]);
        const colours = await tab.evaluate(
          `[...new Set([...document.querySelectorAll('.sheet svg *')].flatMap((e) => [getComputedStyle(e).fill, getComputedStyle(e).stroke]))]`,
        );
        expect((colours as string[]).toSorted()).toEqual(['none', 'rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
        await tab.close();
      });
    }

  for (const paper of ['a4', 'letter'] as const)
    inChromium(
      `with too much of everything, on ${paper}: no text leaves its sheet or lies on another one`,
      async () => {
        const tab = await browser.newPage({ viewport: { width: 1000, height: 1200 } });
        await tab.setContent([...sheetsOf(sheetSource(hostileLayout()), { package: 'P' }, { paper }).html()].join(''));
        expect(await tab.evaluate(OVERFLOWS)).toEqual([]);
        expect(await tab.evaluate(OVERLAPS)).toEqual([]);
        await tab.close();
      },
    );

  inChromium('have nothing that keeps people from reading them, and are black on white in the dark too', async () => {
    const tab = await browser.newPage({
      colorScheme: 'dark',
      bypassCSP: true,
      viewport: { width: 1000, height: 1200 },
    });
    await tab.setContent([...sheetsOf(exampleSource(CASES[0][0]), { package: CASES[0][1] }).html()].join(''));
    const colours = await tab.evaluate(
      `[...new Set([...document.querySelectorAll('.sheet svg *')].flatMap((e) => [getComputedStyle(e).fill, getComputedStyle(e).stroke]))]`,
    );
    expect((colours as string[]).toSorted()).toEqual(['none', 'rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    await tab.addScriptTag({ content: axe });
    const result = (await tab.evaluate('axe.run()')) as { violations: { id: string; nodes: { html: string }[] }[] };
    expect(result.violations.map(({ id, nodes }) => [id, nodes[0].html])).toEqual([]);
    await tab.close();
  });
});
