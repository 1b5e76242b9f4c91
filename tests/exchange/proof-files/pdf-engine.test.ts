import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { Box } from '../../../src/contract/proof-checks/facts.ts';
import { openPdf, type PdfDocument } from '../../../src/exchange/proof-files/pdf/document.ts';
import type { Picture } from '../../../src/exchange/proof-files/pdf/render.ts';
import { bytesSource, fileSource } from '../../../src/exchange/proof-files/pdf/source.ts';
import { officePdf } from '../../support/proof-files/office.ts';
import { drawPdf, rawPdf } from '../../support/proof-files/pdf.ts';

const folder = mkdtempSync(join(tmpdir(), 'pdf-engine-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Opens a file, looks, and closes it. */
async function withPdf<T>(bytes: Uint8Array, look: (pdf: PdfDocument) => T): Promise<T> {
  const pdf = await openPdf(bytesSource(bytes));
  try {
    return look(pdf);
  } finally {
    pdf.close();
  }
}

/** How many pixels of a picture of 72 to the inch are dark, on all of it or within a box and a pixel around it. */
function inked(picture: Picture | null, box?: Box): number {
  const { width, height, rgba } = picture ?? { width: 0, height: 0, rgba: new Uint8Array() };
  const { xPt, yPt, widthPt, heightPt } = box ?? { xPt: 0, yPt: 0, widthPt: width, heightPt: height };
  let count = 0;
  for (let y = Math.max(0, Math.floor(yPt) - 1); y < Math.min(height, yPt + heightPt + 1); y += 1)
    for (let x = Math.max(0, Math.floor(xPt) - 1); x < Math.min(width, xPt + widthPt + 1); x += 1)
      if ((rgba[(y * width + x) * 4] ?? 255) < 200) count += 1;
  return count;
}

const line = (text: string, x: number, y: number) => `BT /F 20 Tf ${x} ${y} Td (${text}) Tj ET\n`;

describe('opening', () => {
  test('a file is read by parts from disk as it is from memory', async () => {
    const bytes = await drawPdf({ size: [432, 648], info: { Title: 'The Salt Almanac' } }, (doc) => {
      for (let i = 1; i <= 120; i += 1) doc.addPage().text(`This is page ${i}. `.repeat(200));
    });
    const path = join(folder, 'long.pdf');
    writeFileSync(path, bytes);
    const source = fileSource(path);
    const pdf = await openPdf(source);
    expect(pdf.pageCount).toBe(
      Number(/Pages: +(\d+)/.exec(execFileSync('pdfinfo', [path], { encoding: 'utf8' }))?.[1]),
    );
    expect(pdf.property('Title')).toBe('The Salt Almanac');
    const last = pdf.page(pdf.pageCount);
    const inMemory = await withPdf(bytes, (other) => other.page(pdf.pageCount).plainText());
    expect(last.plainText()).toBe(inMemory);
    expect(inMemory).toContain('This is page 120.');
    last.close();
    pdf.close();
    source.close();
  });

  test.each([
    ['no PDF', new TextEncoder().encode('Dear printer, the file follows.')],
    ['nothing', new Uint8Array()],
    ['cut short to its head', rawPdf([{}]).slice(0, 60)],
  ])('%s is refused in a sentence', async (_, bytes) => {
    await expect(openPdf(bytesSource(bytes))).rejects.toMatchObject({
      code: 'BAD_INPUT',
      message: expect.stringMatching(/no PDF that can be read/),
    });
  });

  test('one that wants a password is refused as locked', async () => {
    const bytes = await drawPdf({ userPassword: 'harbour', size: [432, 648] }, (doc) => doc.addPage());
    await expect(openPdf(bytesSource(bytes))).rejects.toMatchObject({
      code: 'BAD_INPUT',
      message: expect.stringMatching(/password/),
    });
  });
});

describe('boxes', () => {
  test('are the page’s own or inherited, in any order of corners, and absent where not stated', async () => {
    const bytes = rawPdf(
      [
        { entries: '/TrimBox [9 9 423 639] /BleedBox [0 0 432 648]' },
        { entries: '/MediaBox [450 700 10 20] /CropBox [20 30 440 690]' },
      ],
      '/MediaBox [0 0 432 648]',
    );
    await withPdf(bytes, (pdf) => {
      expect(pdf.boxes(1)).toMatchObject({
        media: { left: 0, bottom: 0, right: 432, top: 648 },
        bleed: { left: 0, bottom: 0, right: 432, top: 648 },
        trim: { left: 9, bottom: 9, right: 423, top: 639 },
      });
      expect(pdf.boxes(2)).toEqual({
        media: { left: 10, bottom: 20, right: 450, top: 700 },
        crop: { left: 20, bottom: 30, right: 440, top: 690 },
        bleed: null,
        trim: null,
      });
    });
  });
});

describe('text', () => {
  test.each([
    [0, { turned: 0 }, 300, 400],
    [90, { turned: 90 }, 400, 300],
    [180, { turned: 180 }, 300, 400],
    [270, { turned: 270 }, 400, 300],
  ])('on a page turned by %i stands where it is shown', async (rotate, expected, width, height) => {
    const bytes = rawPdf(
      [{ entries: `/Rotate ${rotate}`, content: line('Salt', 40, 300) }],
      '/MediaBox [0 0 300 400]',
    );
    await withPdf(bytes, (pdf) => {
      const page = pdf.page(1);
      expect([page.widthPt, page.heightPt]).toEqual([width, height]);
      const [seen] = page.text().lines;
      expect(seen).toMatchObject({ text: 'Salt', ...expected });
      expect(inked(page.render(72), seen?.box)).toBeGreaterThan(40);
      expect(inked(page.render(72))).toBe(inked(page.render(72), seen?.box));
    });
  });

  test('of a spine reads from top to bottom and is a line of its own', async () => {
    const content = `${line('Front', 300, 200)}BT /F 12 Tf 0 -1 1 0 200 300 Tm (Spine) Tj ET\n${line('Back', 40, 200)}`;
    await withPdf(rawPdf([{ content }]), (pdf) => {
      const { lines } = pdf.page(1).text();
      expect(lines.map(({ text, turned }) => `${text} ${turned}`).sort()).toEqual([
        'Back 0',
        'Front 0',
        'Spine 90',
      ]);
    });
  });

  test('keeps the hyphen of a broken word, and a unit of the page that is two points', async () => {
    const content = line('978-0-', 40, 300) + line('306-40615-7', 40, 276);
    await withPdf(rawPdf([{ content }]), (pdf) => {
      const { text, boxOf } = pdf.page(1, 2).text();
      expect(text.replace(/\s/g, '')).toBe('978-0-306-40615-7');
      expect(boxOf(0, text.length)).toMatchObject({ xPt: expect.closeTo(81.4, 0) });
    });
  });

  test('of a file that LibreOffice made is read whole', async ({ skip }) => {
    const text = 'The Salt Almanac, ﬁrst tide — “Fen” Óskarsdal';
    const bytes = officePdf(432, 648, [[text]]);
    if (bytes === null) return skip('LibreOffice Writer is not installed here');
    const [width, lines] = await withPdf(bytes, (pdf) => {
      const page = pdf.page(1);
      return [page.widthPt, page.text().lines.map((line) => line.text)];
    });
    expect(width).toBeCloseTo(432, 0);
    // The ligature is told as the two letters that it stands for.
    expect(lines).toEqual([text.replace('ﬁ', 'fi')]);
  }, 120_000);
});
