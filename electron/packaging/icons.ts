import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { icnsOf, icoOf, type Picture } from './icon-files.ts';

/** Draws resources/icons/icon.svg in every size a system asks for; the results are committed. Needs Chromium. */
const folder = fileURLToPath(new URL('../../resources/icons/', import.meta.url));
const SIDES = [16, 24, 32, 48, 64, 128, 256, 512, 1024];

const drawing = readFileSync(`${folder}icon.svg`, 'utf8');
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox'],
});
const page = await browser.newPage();
await page.setContent(`<style>body{margin:0}svg{display:block}</style>${drawing}`);
const pictures: Picture[] = [];
for (const side of SIDES) {
  await page.setViewportSize({ width: side, height: side });
  pictures.push({ side, png: await page.screenshot({ omitBackground: true }) });
}
await browser.close();

for (const { side, png } of pictures) writeFileSync(`${folder}${side}x${side}.png`, png);
writeFileSync(`${folder}icon.ico`, icoOf(pictures.filter(({ side }) => side <= 256)));
writeFileSync(`${folder}icon.icns`, icnsOf(pictures));
