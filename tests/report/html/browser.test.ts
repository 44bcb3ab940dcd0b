import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, vi } from 'vitest';
import { printPdf } from '../../../src/node/print-pdf.js';
import { axe, inChromium, launchChromium, pagesOf } from '../in-chromium.js';
import type { HtmlLanguage } from '../../../src/report/html/html-phrases.js';
import { htmlEs } from '../../../src/report/languages/html-es.js';
import { pageOf } from './page-of.js';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
const examples = join(import.meta.dirname, '../../../examples');
const PAGES = {
  'two trades without findings': ['ferry-terminal/sprinkler', 'ferry-terminal/duct'],
  'a poor file': ['poor/poor'],
  'nothing that can be read': [],
};
const work = mkdtempSync(join(tmpdir(), 'ahx-browser-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('the report for people in Chromium', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = (await launchChromium()) as Browser;
  });
  afterAll(() => browser?.close());

  interface Reading {
    name: string;
    files: readonly string[];
    colorScheme: 'light' | 'dark';
    width: number;
    language?: HtmlLanguage;
  }
  const cases = Object.entries(PAGES).flatMap(([name, files]): Reading[] => [
    { name, files, colorScheme: 'light', width: 1200 },
    { name, files, colorScheme: 'dark', width: 1200 },
    { name: `${name}, in Spanish`, files, colorScheme: 'light', width: 1200, language: htmlEs },
    // Tables are wider than the window.
    { name: `${name}, narrow`, files, colorScheme: 'dark', width: 400 },
  ]);

  for (const { name, files, colorScheme, width, language } of cases)
    inChromium(`${name}, ${colorScheme}: has nothing that keeps people from reading it`, async () => {
      // The page forbids scripts, that of the test too.
      const page = await browser.newPage({ colorScheme, bypassCSP: true, viewport: { width, height: 900 } });
      const errors: string[] = [];
      page.on('pageerror', (error) => errors.push(String(error)));
      page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
      await page.setContent(html(files, undefined, language));
      await page.addScriptTag({ content: axe });
      const result = (await page.evaluate('axe.run()')) as { violations: { id: string; nodes: { html: string }[] }[] };
      expect(result.violations.map(({ id, nodes }) => [id, nodes[0].html])).toEqual([]);
      expect(errors).toEqual([]);
      await page.close();
    });

  for (const width of [400, 800, 1400])
    inChromium(`fits a window of ${width} pixels without scrolling sideways`, async () => {
      const page = await browser.newPage({ viewport: { width, height: 800 } });
      for (const language of [undefined, htmlEs]) {
        await page.setContent(html(PAGES['two trades without findings'], undefined, language));
        const over = await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');
        expect(over).toBeLessThanOrEqual(0);
      }
      await page.close();
    });

  for (const [paper, width, height] of [
    ['A4', 595, 842],
    ['letter', 612, 792],
  ] as const)
    inChromium(`is printed on ${paper} with a number on each page`, async () => {
      const [file, pdf] = ['html', 'pdf'].map((ending) => join(work, `${paper}.${ending}`));
      writeFileSync(file, html(PAGES['two trades without findings'], paper));
      printPdf(file, pdf);
      const pages = await pagesOf(pdf);
      expect(pages.length).toBeGreaterThanOrEqual(4);
      expect(pages.length).toBeLessThanOrEqual(12);
      for (const page of pages) expect([page.width, page.height].map(Math.round)).toEqual([width, height]);
      expect(pages.map(({ text }) => /Page (\d+) of (\d+)/.exec(text)?.slice(1).map(Number))).toEqual(
        pages.map((_, k) => [k + 1, pages.length]),
      );
      expect(pages[0].text).toContain('Ferry terminal, Sample Bay (invented)');
      expect(pages[0].text).toContain('What is not said');
      for (const { text } of pages) {
        expect(text).toMatch(
          /Ferry terminal, Sample Bay \(invented\) · revision \w+ of SB-100-FP · revision \w+ of SB-100-DU/,
        );
        expect(text).toContain('As of 2026-03-02T07:30:00-05:00');
      }
      expect(pages.filter(({ text }) => / Plans /.test(text) && text.includes('Plan orientation'))).toHaveLength(1);
      expect(pages.map(({ text }) => text).join(' ')).toContain('Revise and resubmit');
    });

  inChromium('is printed in Spanish with a number on each page', async () => {
    const [file, pdf] = ['html', 'pdf'].map((ending) => join(work, `es.${ending}`));
    writeFileSync(file, html(PAGES['two trades without findings'], 'A4', htmlEs));
    printPdf(file, pdf);
    const pages = await pagesOf(pdf);
    expect(pages.length).toBeGreaterThanOrEqual(4);
    expect(pages.map(({ text }) => /Página (\d+) de (\d+)/.exec(text)?.slice(1).map(Number))).toEqual(
      pages.map((_, k) => [k + 1, pages.length]),
    );
  });

  inChromium('leaves no table wider than the paper, however long the texts are', async () => {
    const layout = JSON.parse(readFileSync(join(examples, 'ferry-terminal/sprinkler.ahx.json'), 'utf8'));
    layout.holes.forEach((hole: Record<string, unknown>, k: number) => {
      hole.tag = `${'LONG'.repeat(20)}${k}`;
      hole.point = [-123_456.7 - k, 98_765.4, 25];
    });
    const page = await browser.newPage({ viewport: { width: 680, height: 900 } });
    await page.emulateMedia({ media: 'print' });
    layout.holeTypes[0].minSpacing.source = 'SOURCE'.repeat(20);
    for (const language of [htmlEs, undefined]) {
      await page.setContent(pageOf([JSON.stringify(layout)], { language }));
      // What is wider makes the browser print all of it smaller, plans too. A4 within the margins: 180 mm, 680 dots.
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(680);
    }
    const fractions = (await page.evaluate(
      `[...document.querySelectorAll('.schedule tbody td:nth-child(6)')].map((cell) => {
        const range = document.createRange();
        range.selectNodeContents(cell);
        return range.getClientRects().length;
      })`,
    )) as number[];
    expect(fractions.length).toBeGreaterThan(30);
    expect(new Set(fractions)).toEqual(new Set([1]));
    await page.close();
  });

  inChromium('shows nothing in colour alone: severities are words', async () => {
    const page = await browser.newPage();
    await page.setContent(html(PAGES['a poor file']));
    const words = await page.locator('.severity').allInnerTexts();
    expect(words.length).toBeGreaterThan(5);
    expect(new Set(words.map((word) => word.toLowerCase()))).toEqual(new Set(['error']));
    await page.close();
  });

  function html(files: readonly string[], paper?: 'A4' | 'letter', language?: HtmlLanguage): string {
    const texts = files.map((name) => readFileSync(join(examples, `${name}.ahx.json`), 'utf8'));
    return pageOf(texts.length === 0 ? ['{'] : texts, { language }, paper);
  }
});
