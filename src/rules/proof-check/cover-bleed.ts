import type { CheckLine, SheetEdges } from '../../contract/proof-checks/facts.ts';
import { coverLine } from './cover-line.ts';
import type { Laid } from './cover-place.ts';
import type { SheetSeen } from './cover-size.ts';
import { shownUm, umOf } from './place-line.ts';
import type { ProofRecord } from './record.ts';

/** Bleed may be short of what is asked by so much: 3 mm and 1/8 in are taken for the same (common practice, no source). */
const TOLERANCE_UM = 250;
/** Print that ends this near to the cut was meant to be cut through (common practice, no source). */
const AT_CUT_UM = 1_000;

const SIDES = ['left', 'top', 'right', 'bottom'] as const;
type Side = (typeof SIDES)[number];
const WORDS: Record<Side, string> = { left: 'left', top: 'head', right: 'right', bottom: 'foot' };

/** From each edge of the sheet as seen to where it is cut. */
function roomBeyond({ whole }: SheetSeen, { trimmed }: Laid): Record<Side, number> {
  return {
    left: trimmed.xUm - whole.xUm,
    top: trimmed.yUm - whole.yUm,
    right: whole.xUm + whole.widthUm - trimmed.xUm - trimmed.widthUm,
    bottom: whole.yUm + whole.heightUm - trimmed.yUm - trimmed.heightUm,
  };
}

/** How far print runs beyond the cut at each part of a side; null where none is near it. */
function runs(edges: SheetEdges, side: Side, roomUm: number): number[] {
  return edges[side].flatMap((deepPt) => (deepPt === null ? [] : [roomUm - umOf(deepPt)]));
}

/**
 * Bleed, or paper to turn in: there is enough of it around the cut, and what is printed up to the cut runs through it
 * (STANDARDS E2–E4; the printer's own figures).
 */
export function bleedLine(
  seen: SheetSeen,
  laid: Laid | null,
  edges: SheetEdges | null,
  record: ProofRecord,
): CheckLine {
  const unit = record.lengthUnit;
  if (laid === null || edges === null)
    return coverLine('bleed', 'Bleed', 'cannot tell', {
      advice:
        'This is told once the size of the cover fits; see that print runs beyond the cut on all sides.',
    });
  const { edge } = laid.fit.sheet;
  const label = edge.kind === 'bleed' ? 'Bleed' : 'Turn-in';
  const needUm = edge.um - TOLERANCE_UM;
  const room = roomBeyond(seen, laid);
  const least = Math.min(...SIDES.map((side) => room[side]));
  const expected = `${shownUm(edge.um, unit)} on all sides`;
  if (least < needUm)
    return coverLine('bleed', label, 'differs', {
      expected,
      found: least < AT_CUT_UM ? 'none' : shownUm(least, unit),
      advice: `Have it exported with ${label.toLowerCase()}; without it a white edge shows where the cut is a little off.`,
    });
  const short = SIDES.filter((side) =>
    runs(edges, side, room[side]).some((um) => um > -AT_CUT_UM && um < needUm),
  );
  if (short.length === 0)
    return coverLine('bleed', label, 'agreed', { expected, found: `${shownUm(least, unit)} at least` });
  const where = short.map((side) => WORDS[side]).join(', ');
  return coverLine('bleed', label, 'differs', {
    expected,
    found: `print ends at or shortly after the cut: ${where}`,
    advice: 'Have the ground and pictures there drawn out to the edge of the sheet.',
  });
}
