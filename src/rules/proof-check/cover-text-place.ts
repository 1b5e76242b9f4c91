import type { CheckLine, TextLine } from '../../contract/proof-checks/facts.ts';
import { coverLine, rectOf } from './cover-line.ts';
import { beyond, type Laid, panelOf } from './cover-place.ts';
import { shownUm } from './place-line.ts';
import type { ProofRecord } from './record.ts';

/** Turned lines so near to the spine are meant for it, even where they miss it. */
const NEAR_UM = 10_000;
/** Boxes of letters are good to a quarter of a millimetre. */
const TOLERANCE_UM = 250;

const SPINE = 'Text on the spine';

function spineLines(lines: readonly TextLine[], laid: Laid): TextLine[] {
  const spine = panelOf(laid, 'spine');
  if (spine === undefined) return [];
  const centre = spine.xUm + spine.widthUm / 2;
  return lines.filter(({ box, turned, text }) => {
    const rect = rectOf(box);
    const off = Math.abs(rect.xUm + rect.widthUm / 2 - centre);
    const along = turned % 180 !== 0;
    return (
      text.trim() !== '' &&
      off <= spine.widthUm / 2 + (along ? NEAR_UM : 0) &&
      (along || rect.widthUm < 1.5 * spine.widthUm)
    );
  });
}

/** Text on the spine keeps within its margins, and stands only on one that is thick enough (the printer's figures). */
export function spineLine(lines: readonly TextLine[], laid: Laid, record: ProofRecord): CheckLine {
  const unit = record.lengthUnit;
  const spine = panelOf(laid, 'spine');
  const { spineTextFromPages: least, spineMarginUm, safeMarginUm } = record.printer;
  const there = spineLines(lines, laid);
  const text = there.map((line) => line.text).join(' · ');
  const [first] = there;
  const tooThin = laid.fit.pages < least;
  const expected = tooThin
    ? `none with fewer than ${least} pages`
    : `${shownUm(spineMarginUm, unit)} from the folds, ${shownUm(safeMarginUm, unit)} from head and foot`;
  if (first === undefined)
    return coverLine('spine', SPINE, 'agreed', { expected, found: 'none that can be read' });
  const line = (state: CheckLine['state'], found: string, advice: string, at: TextLine) =>
    coverLine('spine', SPINE, state, { expected, found, advice, page: 1, box: at.box });
  if (tooThin)
    return line(
      'differs',
      text,
      'A spine this thin cannot carry text: folds wander. Have it taken off.',
      first,
    );
  const safe = spine?.safe;
  if (!safe)
    return line(
      'differs',
      text,
      'The spine has no room for text within its margins. Have it taken off.',
      first,
    );
  const worst = there
    .map((one) => ({ one, um: beyond(rectOf(one.box), safe) }))
    .reduce((a, b) => (b.um > a.um ? b : a));
  if (worst.um <= TOLERANCE_UM) return line('agreed', text, '', first);
  return line(
    'differs',
    `“${worst.one.text}” stands ${shownUm(worst.um, unit)} out of its margins`,
    'It may run over a fold or be cut; have it set smaller or moved.',
    worst.one,
  );
}

/** Text on covers and flaps keeps clear of the cut; what lies outside the cut altogether is the printer's. */
export function safeLine(lines: readonly TextLine[], laid: Laid, record: ProofRecord): CheckLine {
  const label = 'Text clear of the cut';
  const unit = record.lengthUnit;
  const { safeMarginUm } = record.printer;
  const { trimmed } = laid;
  const safe = {
    xUm: trimmed.xUm + safeMarginUm,
    yUm: trimmed.yUm + safeMarginUm,
    widthUm: trimmed.widthUm - 2 * safeMarginUm,
    heightUm: trimmed.heightUm - 2 * safeMarginUm,
  };
  const expected = `${shownUm(safeMarginUm, unit)} or more`;
  const onSpine = new Set(spineLines(lines, laid));
  const near = lines.filter((line) => {
    const rect = rectOf(line.box);
    const outside =
      rect.xUm + rect.widthUm < trimmed.xUm ||
      rect.yUm + rect.heightUm < trimmed.yUm ||
      rect.xUm > trimmed.xUm + trimmed.widthUm ||
      rect.yUm > trimmed.yUm + trimmed.heightUm;
    return !outside && !onSpine.has(line) && beyond(rect, safe) > TOLERANCE_UM;
  });
  const [first] = near;
  if (first === undefined) return coverLine('safe', label, 'agreed', { expected, found: 'all of it' });
  const leftUm = safeMarginUm - beyond(rectOf(first.box), safe);
  return coverLine('safe', label, 'differs', {
    expected,
    found: leftUm > 0 ? `“${first.text}”: ${shownUm(leftUm, unit)}` : `“${first.text}” runs over the cut`,
    advice: 'Have it moved further in, or it may be cut.',
    page: 1,
    box: first.box,
  });
}
