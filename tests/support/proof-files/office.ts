import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** A flat OpenDocument text: pages of a size in points, each given as its lines. */
function flatText(widthPt: number, heightPt: number, pages: readonly (readonly string[])[]): string {
  const body = pages
    .flatMap((lines, page) =>
      (lines.length === 0 ? [''] : lines).map(
        (line, i) =>
          `<text:p text:style-name="${i === 0 && page > 0 ? 'Next' : 'Line'}">${escaped(line)}</text:p>`,
      ),
    )
    .join('');
  const face =
    '<style:text-properties style:font-name="DejaVu Serif" fo:font-size="10pt" fo:language="en" fo:country="GB"/>';
  return `<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0" xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.text">
<office:font-face-decls><style:font-face style:name="DejaVu Serif" svg:font-family="'DejaVu Serif'"/></office:font-face-decls>
<office:styles><style:style style:name="Line" style:family="paragraph">${face}</style:style>
<style:style style:name="Next" style:family="paragraph"><style:paragraph-properties fo:break-before="page"/>${face}</style:style></office:styles>
<office:automatic-styles><style:page-layout style:name="Sheet"><style:page-layout-properties fo:page-width="${widthPt}pt" fo:page-height="${heightPt}pt" fo:margin="54pt"/></style:page-layout></office:automatic-styles>
<office:master-styles><style:master-page style:name="Standard" style:page-layout-name="Sheet"/></office:master-styles>
<office:body><office:text>${body}</office:text></office:body></office:document>`;
}

/** A PDF exported by LibreOffice Writer; null where it is not installed. Takes some seconds. */
export function officePdf(
  widthPt: number,
  heightPt: number,
  pages: readonly (readonly string[])[],
): Uint8Array | null {
  const folder = mkdtempSync(join(tmpdir(), 'office-'));
  try {
    const source = join(folder, 'text.fodt');
    writeFileSync(source, flatText(widthPt, heightPt, pages));
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    spawnSync('soffice', ['--headless', profile, '--convert-to', 'pdf', '--outdir', folder, source], {
      timeout: 110_000,
      env: { ...process.env, HOME: folder },
    });
    const made = join(folder, 'text.pdf');
    return existsSync(made) ? readFileSync(made) : null;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
