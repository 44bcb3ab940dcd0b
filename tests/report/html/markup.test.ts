import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contentText, html, Markup } from '../../../src/report/html/markup.js';

describe('a template of HTML', () => {
  it('escapes texts and takes markup as it is', () => {
    expect(html`<p title="${'"a" & \'b\''}">${'<script>'}${html`<b>${1}</b>`}</p>`.text).toBe(
      '<p title="&quot;a&quot; &amp; &apos;b&apos;">&lt;script&gt;<b>1</b></p>',
    );
  });

  it('puts lists one after the other and leaves nothing for what is not there', () => {
    expect(html`<ul>${['a', 'b'].map((one) => html`<li>${one}</li>`)}${undefined}${false}</ul>`.text).toBe(
      '<ul><li>a</li><li>b</li></ul>',
    );
  });

  it('lets no text out of its place, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const shown = contentText(text);
        expect(shown).not.toMatch(/[<>"'\p{Cc}\p{Cs}]/u);
        expect(shown.replace(/&(amp|lt|gt|quot|apos);/g, '')).not.toContain('&');
      }),
    );
  });

  it('is made of markup only where markup is meant', () => {
    expect(contentText(new Markup('<i>'))).toBe('<i>');
  });
});
