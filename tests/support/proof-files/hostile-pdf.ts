import { deflateSync } from 'node:zlib';

/** A PDF of numbered objects, object 1 the catalogue; streams may hold any bytes. */
export function pdfOf(
  objects: readonly (string | { entries: string; bytes: Buffer })[],
  trailer = '',
): Buffer {
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n')];
  let offset = parts[0]?.length ?? 0;
  const add = (part: Buffer) => {
    parts.push(part);
    offset += part.length;
  };
  const offsets = objects.map((object, i) => {
    const at = offset;
    add(Buffer.from(`${i + 1} 0 obj\n`));
    if (typeof object === 'string') add(Buffer.from(object, 'latin1'));
    else {
      add(Buffer.from(`<< /Length ${object.bytes.length} ${object.entries} >>\nstream\n`));
      add(object.bytes);
      add(Buffer.from('\nendstream'));
    }
    add(Buffer.from('\nendobj\n'));
    return `${String(at).padStart(10, '0')} 00000 n \n`;
  });
  const size = objects.length + 1;
  const start = offset;
  add(
    Buffer.from(
      `xref\n0 ${size}\n0000000000 65535 f \n${offsets.join('')}trailer\n<< /Size ${size} /Root 1 0 R ${trailer} >>\nstartxref\n${start}\n%%EOF\n`,
    ),
  );
  return Buffer.concat(parts);
}

/** One page that draws `content`, with resources and further objects from 5 on. */
export const onePage = (
  content: string | { entries: string; bytes: Buffer },
  resources = '',
  more: readonly (string | { entries: string; bytes: Buffer })[] = [],
  media = '0 0 432 648',
) =>
  pdfOf([
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [${media}] /Contents 4 0 R /Resources << ${resources} >> >>`,
    typeof content === 'string' ? { entries: '', bytes: Buffer.from(content) } : content,
    ...more,
  ]);

/** So many bytes of one sort, packed twice: a kilobyte or two that unpack to gigabytes. */
export function bomb(megabytes: number): { entries: string; bytes: Buffer } {
  const once = deflateSync(Buffer.alloc(megabytes * 1024 * 1024, ' '), { level: 9 });
  return { entries: '/Filter [/FlateDecode /FlateDecode]', bytes: deflateSync(once, { level: 9 }) };
}

const form = (resources: string, content: string) => ({
  entries: `/Type /XObject /Subtype /Form /BBox [0 0 432 648] /Resources << ${resources} >>`,
  bytes: Buffer.from(content),
});

/** Forms each of which draws the next so many times. */
export const formTower = (levels: number, times: number) =>
  onePage(
    '/X Do',
    '/XObject << /X 5 0 R >>',
    Array.from({ length: levels }, (_, i) =>
      i === levels - 1
        ? form('', '0 0 10 10 re f')
        : form(`/XObject << /X ${6 + i} 0 R >>`, '/X Do '.repeat(times)),
    ),
  );

export const selfDrawingForm = () =>
  onePage('/X Do', '/XObject << /X 5 0 R >>', [form('/XObject << /X 5 0 R >>', '/X Do /X Do')]);

export const selfDrawingFont = () =>
  onePage('BT /T 12 Tf 10 10 Td (aa) Tj ET', '/Font << /T 5 0 R >>', [
    '<< /Type /Font /Subtype /Type3 /FontBBox [0 0 500 500] /FontMatrix [0.001 0 0 0.001 0 0] /CharProcs << /a 6 0 R >> /Encoding << /Type /Encoding /Differences [97 /a] >> /FirstChar 97 /LastChar 97 /Widths [500] /Resources << /Font << /T 5 0 R >> >> >>',
    { entries: '', bytes: Buffer.from('500 0 0 0 500 500 d1 BT /T 500 Tf 0 0 Td (aa) Tj ET') },
  ]);
