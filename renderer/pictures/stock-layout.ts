import type { Stock } from '../../src/contract/pictures.ts';
import { dayNumber, dayOf, type Tick, ticksOf, timeScale } from './time-scale.ts';

export interface StockLayout {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
  /** The line of numbers left, a step at every change, as an SVG path; the same closed to the ground. */
  line: string;
  area: string;
  /** From today on at the pace of late; empty where none is given out. */
  ahead: string;
  ticks: Tick[];
  levels: { y: number; label: number }[];
  todayX: number;
  todayY: number;
  /** The day they run out, where it lies within the picture. */
  endX: number | null;
}

/** Days ahead that are always shown, and at most: as many as lie behind. */
const LEAST_AHEAD = 3 * 365;

/** Where the line ahead ends: on the day they run out, or as far ahead as the picture looks back. */
function aheadOf(stock: Stock, first: string): { day: string; free: number } | null {
  if (stock.runsOutOn === null) return null;
  const now = dayNumber(stock.day);
  const end = dayNumber(stock.runsOutOn);
  const horizon = now + Math.max(LEAST_AHEAD, now - dayNumber(first));
  if (end <= horizon) return { day: stock.runsOutOn, free: 0 };
  return { day: dayOf(horizon), free: stock.free * (1 - (horizon - now) / (end - now)) };
}

/** A round number of at least `value`, so that the levels are easy to read. */
function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(1, value)));
  return [1, 2, 2.5, 5, 10].map((step) => step * power).find((step) => step >= value) ?? value;
}

/** Places the numbers left on a line of time; null without a block, since nothing is left then. */
export function stockLayout(stock: Stock, width: number, height = 240): StockLayout | null {
  const [first] = stock.points;
  if (!first) return null;
  const box = { left: 48, right: width - 14, top: 20, bottom: height - 28 };
  const most = roundUp(Math.max(...stock.points.map((point) => point.free), 1));
  const ahead = aheadOf(stock, first.day);
  const days = [first.day, stock.day, ...(ahead ? [ahead.day] : [])];
  const scale = timeScale(days, box.left, box.right);
  const y = (free: number) => box.bottom - (Math.max(0, free) / most) * (box.bottom - box.top);
  const two = (value: number) => value.toFixed(2);
  const steps = stock.points.map(({ day, free }) => `H${two(scale.x(day))}V${two(y(free))}`).join('');
  const [startX, todayX, todayY] = [scale.x(first.day), scale.x(stock.day), y(stock.free)];
  const line = `M${two(startX)} ${two(y(first.free))}${steps}H${two(todayX)}`;
  return {
    width,
    height,
    ...box,
    line,
    area: `${line}V${two(box.bottom)}H${two(startX)}Z`,
    ahead: ahead ? `M${two(todayX)} ${two(todayY)}L${two(scale.x(ahead.day))} ${two(y(ahead.free))}` : '',
    ticks: ticksOf(scale),
    levels: [0, most / 2, most].map((level) => ({ y: y(level), label: level })),
    todayX,
    todayY,
    endX: ahead?.free === 0 ? scale.x(ahead.day) : null,
  };
}
