import type { MoneyCurve, MoneyCurves } from '../../src/contract/money.ts';

export interface CurveLine {
  curve: MoneyCurve;
  /** Stretches of the line as one SVG path; empty where nothing of it can be told. */
  path: string;
  /** Where it stands today. */
  now: { x: number; y: number } | null;
  /** The end of the line, and where its name stands, moved so that names do not lie on each other. */
  end: { x: number; y: number; labelY: number } | null;
  /** Tells lines apart without colour. */
  dash: string;
}

export interface CurvesLayout {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
  lines: CurveLine[];
  xTicks: { x: number; value: number }[];
  yTicks: { y: number; value: number }[];
  /** Where nothing is earned; null where that lies outside. */
  zeroY: number | null;
}

const DASHES = ['', '9 4', '2 3', '12 3 2 3', '5 2', '1 5'];
const NAME_GAP = 15;

/** A round step that parts a span into about `parts`. */
export function roundStep(span: number, parts: number): number {
  const raw = Math.max(span / parts, 1);
  const power = 10 ** Math.floor(Math.log10(raw));
  return ([1, 2, 5, 10].find((step) => step * power >= raw) ?? 10) * power;
}

function ticks(from: number, to: number, parts: number): number[] {
  const step = roundStep(to - from, parts);
  const first = Math.ceil(from / step) * step;
  return Array.from({ length: Math.floor((to - first) / step) + 1 }, (_, i) => first + i * step);
}

function valuesOf({ curves }: MoneyCurves): number[] {
  return curves.flatMap(({ points, now }) =>
    [...points, ...(now ? [now] : [])].flatMap(({ keptMinor }) => (keptMinor === null ? [] : [keptMinor])),
  );
}

/** Moves names apart from the top down, and back up where they would leave the picture. */
function spread(lines: CurveLine[], bottom: number): void {
  const ends = lines.flatMap(({ end }) => (end ? [end] : [])).sort((a, b) => a.y - b.y);
  let least = Number.NEGATIVE_INFINITY;
  for (const end of ends) {
    end.labelY = Math.max(end.y, least);
    least = end.labelY + NAME_GAP;
  }
  let most = bottom;
  for (const end of ends.toReversed()) {
    end.labelY = Math.min(end.labelY, most);
    most = end.labelY - NAME_GAP;
  }
}

/** Places a line for every listing over price, pages or discount; null where nothing can be told of any. */
export function curvesLayout(curves: MoneyCurves, width: number, height = 340): CurvesLayout | null {
  const values = valuesOf(curves);
  if (values.length === 0) return null;
  const names = width < 520 ? 0 : 150;
  const box = { left: 62, right: width - names - 12, top: 14, bottom: height - 40 };
  const step = roundStep(Math.max(...values, 0) - Math.min(...values, 0), 6);
  const low = Math.floor(Math.min(...values, 0) / step) * step;
  const high = Math.max(Math.ceil(Math.max(...values, 0) / step) * step, low + step);
  const { from, to } = curves;
  const x = (value: number) => box.left + ((value - from) / Math.max(to - from, 1)) * (box.right - box.left);
  const y = (value: number) => box.bottom - ((value - low) / (high - low)) * (box.bottom - box.top);
  const two = (value: number) => value.toFixed(2);
  const lines = curves.curves.map((curve, index): CurveLine => {
    let open = false;
    let path = '';
    let last: { x: number; y: number } | null = null;
    for (const { x: at, keptMinor } of curve.points) {
      if (keptMinor === null || at > to) open = false;
      else {
        last = { x: x(at), y: y(keptMinor) };
        path += `${open ? 'L' : 'M'}${two(last.x)} ${two(last.y)}`;
        open = true;
      }
    }
    const { now } = curve;
    const here = now && now.keptMinor !== null && now.x >= from && now.x <= to;
    const mark = here ? { x: x(now.x), y: y(now.keptMinor ?? 0) } : null;
    const end = last ?? mark;
    return {
      curve,
      path,
      now: mark,
      end: end ? { ...end, labelY: end.y } : null,
      dash: DASHES[index % DASHES.length] ?? '',
    };
  });
  spread(lines, box.bottom);
  return {
    width,
    height,
    ...box,
    lines,
    xTicks: ticks(from, to, width < 520 ? 3 : 6).map((value) => ({ x: x(value), value })),
    yTicks: ticks(low, high, 6).map((value) => ({ y: y(value), value })),
    zeroY: low <= 0 && high >= 0 ? y(0) : null,
  };
}
