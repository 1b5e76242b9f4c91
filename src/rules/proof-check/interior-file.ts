import type { CheckLine, PdfFacts } from '../../contract/proof-checks/facts.ts';
import { counted, pagesNamed, placedLineOf } from './place-line.ts';

/** 'ABCDEF+Name' is a subset of Name (ISO 32000-1, 9.6.4). */
const fontName = (name: string) => name.replace(/^[A-Z]{6}\+/, '') || 'a font without a name';

/** Every font has to be in the file, the fourteen standard ones too (STANDARDS G, PDF/X). */
export function fontsLine({ fonts }: PdfFacts): CheckLine {
  const label = 'Fonts';
  const expected = 'all embedded';
  const missing = fonts.filter(({ embedded, drawn }) => !embedded && !drawn);
  const [first] = missing;
  const names = (list: typeof fonts) => [...new Set(list.map(({ name }) => fontName(name)))].join(', ');
  if (first === undefined)
    return placedLineOf('interior.fonts', label, 'agreed', {
      expected,
      found: fonts.length === 0 ? 'no text, so no fonts' : `${names(fonts)}: embedded`,
    });
  return placedLineOf('interior.fonts', label, 'differs', {
    expected,
    found: `not embedded: ${names(missing)}`,
    advice: 'Export with all fonts embedded; another font takes their place otherwise, and lines run anew.',
    place: { page: first.firstPage, box: null },
  });
}

export function encryptionLine({ encrypted }: PdfFacts): CheckLine {
  const expected = 'none';
  return encrypted
    ? placedLineOf('interior.protection', 'Protection', 'differs', {
        expected,
        found: 'the file is encrypted',
        advice:
          'Export it without a password and without restrictions; a printer’s programs may not open or change it.',
      })
    : placedLineOf('interior.protection', 'Protection', 'agreed', { expected, found: 'none' });
}

/** Versions that each kind of PDF/X allows at most, and whether it wants a trim box (STANDARDS G, PDF/X). */
const CLAIMS: readonly { claim: RegExp; most: number }[] = [
  { claim: /PDF\/X-1a?:2001|PDF\/X-3:2002/i, most: 1.3 },
  { claim: /PDF\/X-1a?:2003|PDF\/X-3:2003/i, most: 1.4 },
  { claim: /PDF\/X-4/i, most: 1.7 },
  { claim: /PDF\/X-6/i, most: 2 },
];
/** Older files lack what printing needs; newer ones are read by few printers (common practice, no source). */
const OLDEST = 1.3;
const NEWEST = 1.7;

/** What the file claims and does not keep. */
function brokenClaim(facts: PdfFacts): string[] {
  const { pdfx, version, encrypted, fonts, scripts, pages } = facts;
  if (pdfx === null) return [];
  const rule = CLAIMS.find(({ claim }) => claim.test(pdfx));
  const broken: string[] = [];
  if (rule && Number(version) > rule.most) broken.push(`it is PDF ${version}, newer than that allows`);
  if (encrypted) broken.push('it is encrypted');
  if (scripts > 0) broken.push('it holds scripts');
  if (fonts.some(({ embedded, drawn }) => !embedded && !drawn)) broken.push('fonts are missing');
  if (pages.some(({ trim }) => trim === null)) broken.push('not every page states its trim box');
  return broken;
}

export function versionLine(facts: PdfFacts): CheckLine {
  const { pdfx, version } = facts;
  const label = 'PDF version';
  const expected = `PDF ${OLDEST} to ${NEWEST}`;
  const found = `PDF ${version || 'of no version'}, ${pdfx === null ? 'no claim of PDF/X' : `claims ${pdfx}`}`;
  const line = (state: CheckLine['state'], advice = '') =>
    placedLineOf('interior.version', label, state, { expected, found, advice });
  const number = Number(version);
  const broken = brokenClaim(facts);
  if (broken.length > 0)
    return line(
      'differs',
      `The file does not keep to ${pdfx}: ${broken.join(', ')}. Export it again as ${pdfx}.`,
    );
  if (!(number > 0)) return line('cannot tell', 'The file states no version.');
  if (number < OLDEST) return line('differs', 'Export it anew; printers do not take files so old.');
  if (number > NEWEST && !/PDF\/X-6/i.test(pdfx ?? ''))
    return line(
      'cannot tell',
      `Ask the printer whether PDF ${version} is taken; many take PDF ${NEWEST} at most.`,
    );
  return line('agreed');
}

/** Nothing in a book acts: scripts and attached files are for screens (STANDARDS G, PDF/X). */
export function scriptsLine({ scripts, attachments }: PdfFacts): CheckLine {
  const label = 'Scripts and attached files';
  const expected = 'none';
  const parts = [
    ...(scripts > 0 ? [counted(scripts, 'script')] : []),
    ...(attachments > 0 ? [counted(attachments, 'attached file')] : []),
  ];
  if (parts.length === 0)
    return placedLineOf('interior.scripts', label, 'agreed', { expected, found: 'none' });
  return placedLineOf('interior.scripts', label, 'differs', {
    expected,
    found: parts.join(', '),
    advice: 'Nothing was run. Export the file without them; find out where they come from.',
  });
}

/** Pages that are blank before anything is printed. */
export function blankLine(
  { pages }: PdfFacts,
  { figures }: { figures: { blankFirstPages: number } },
): CheckLine {
  const label = 'First pages';
  const most = figures.blankFirstPages;
  const expected =
    most === 0 ? 'printed from the first page on' : `at most ${counted(most, 'blank page')} first`;
  const printed = pages.findIndex(({ blank }) => blank === false);
  const known = pages.slice(0, printed < 0 ? undefined : printed).every(({ blank }) => blank === true);
  const blanks = printed < 0 ? pages.length : printed;
  if (!known)
    return placedLineOf('interior.blank', label, 'cannot tell', {
      expected,
      advice: 'Look at them yourself.',
    });
  if (blanks <= most)
    return placedLineOf('interior.blank', label, 'agreed', {
      expected,
      found: blanks === 0 ? 'page 1 is printed' : `${counted(blanks, 'blank page')} first`,
    });
  return placedLineOf('interior.blank', label, 'differs', {
    expected,
    found:
      blanks === pages.length
        ? 'nothing is printed on any page'
        : `blank: ${pagesNamed(pages.slice(0, blanks).map((_, i) => i + 1))}`,
    advice: 'Take the blank pages out, or see whether something is missing there.',
    place: { page: 1, box: null },
  });
}
