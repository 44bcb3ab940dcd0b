import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { type Browser, chromium } from 'playwright-core';
import { findChromium } from '../../src/node/print-pdf.js';
import { itWith } from '../house/system-part.js';

const executablePath = findChromium();

/** An `it` for tests that need the browser. */
export const inChromium = itWith('chromium', executablePath !== undefined);

/** The check of accessibility, to be run in a page. */
export const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The browser of the system; undefined where there is none. */
export async function launchChromium(): Promise<Browser | undefined> {
  if (executablePath === undefined) return undefined;
  return chromium.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
}

/** Size in points and text of each page of a PDF. */
export async function pagesOf(pdf: string): Promise<{ width: number; height: number; text: string }[]> {
  const loading = getDocument({ data: new Uint8Array(readFileSync(pdf)), verbosity: 0 });
  const document = await loading.promise;
  const pages = [];
  for (let k = 1; k <= document.numPages; k++) {
    const page = await document.getPage(k);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? ' ' : ''}` : '')).join('');
    pages.push({ width, height, text: text.replace(/\s+/g, ' ') });
  }
  await loading.destroy();
  return pages;
}
