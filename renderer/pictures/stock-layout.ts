import type { Stock } from '../../src/contract/pictures.ts';
import { type Tick, ticksOf, timeScale } from './time-scale.ts';

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
  /** From today to the day they run out at the pace of late; empty where they last. */
  ahead: string;
  ticks: Tick[];
  levels: { y: number; label: number }[];
  todayX: number;
  todayY: number;
  endX: number | null;
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
  const days = [first.day, stock.day, ...(stock.runsOutOn === null ? [] : [stock.runsOutOn])];
  const scale = timeScale(days, box.left, box.right);
  const y = (free: number) => box.bottom - (Math.max(0, free) / most) * (box.bottom - box.top);
  const two = (value: number) => value.toFixed(2);
  const steps = stock.points.map(({ day, free }) => `H${two(scale.x(day))}V${two(y(free))}`).join('');
  const [startX, todayX, todayY] = [scale.x(first.day), scale.x(stock.day), y(stock.free)];
  const line = `M${two(startX)} ${two(y(first.free))}${steps}H${two(todayX)}`;
  const endX = stock.runsOutOn === null ? null : scale.x(stock.runsOutOn);
  return {
    width,
    height,
    ...box,
    line,
    area: `${line}V${two(box.bottom)}H${two(startX)}Z`,
    ahead: endX === null ? '' : `M${two(todayX)} ${two(todayY)}L${two(endX)} ${two(box.bottom)}`,
    ticks: ticksOf(scale),
    levels: [0, most / 2, most].map((level) => ({ y: y(level), label: level })),
    todayX,
    todayY,
    endX,
  };
}
