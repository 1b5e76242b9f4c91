/**
 * A PDF file of numbered objects, all ASCII: wraps them in a header, a cross-reference table and a trailer; object 1 is
 * the catalogue, the last one the information. The same objects always give the same bytes.
 */
export function assemblePdf(objects: readonly string[]): Uint8Array {
  let file = '%PDF-1.4\n';
  const offsets = objects.map((object, i) => {
    const offset = file.length;
    file += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return `${String(offset).padStart(10, '0')} 00000 n \n`;
  });
  const size = objects.length + 1;
  file += `xref\n0 ${size}\n0000000000 65535 f \n${offsets.join('')}trailer\n<< /Size ${size} /Root 1 0 R /Info ${objects.length} 0 R >>\nstartxref\n${file.length}\n%%EOF\n`;
  return new TextEncoder().encode(file);
}
