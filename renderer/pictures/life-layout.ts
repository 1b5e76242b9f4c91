import type { Life, LifeLane } from '../../src/contract/pictures.ts';
import type { FormatStanding } from '../../src/contract/terms.ts';
import { type Tick, ticksOf, timeScale } from './time-scale.ts';

export interface Bar {
  standing: FormatStanding;
  x: number;
  width: number;
}

export interface LaneBox {
  lane: LifeLane;
  /** Top of the lane with its name, and of its bar. */
  top: number;
  barTop: number;
  bars: Bar[];
  /** The day it goes on sale, where one is set. */
  saleX: number | null;
}

export interface EditionBox {
  editionId: number;
  label: string;
  top: number;
  bottom: number;
  lanes: LaneBox[];
  releaseX: number | null;
  retirementX: number | null;
  /** The days of plans that were dropped. */
  dropped: { kind: 'release' | 'retirement'; x: number }[];
}

export interface LifeLayout {
  width: number;
  height: number;
  start: number;
  end: number;
  axisY: number;
  ticks: Tick[];
  todayX: number;
  editions: EditionBox[];
  /** From an edition to the one that replaces it. */
  successions: { from: EditionBox; to: EditionBox }[];
}

export const LIFE = {
  top: 34,
  heading: 26,
  lane: 38,
  name: 17,
  bar: 12,
  gap: 14,
  bottom: 12,
  left: 22,
} as const;
/** A stretch of a day or two is still seen. */
const LEAST = 2;

function daysOf(life: Life): string[] {
  const days = life.editions.flatMap((edition) => [
    edition.releaseDay,
    edition.retirementDay,
    ...edition.dropped.map((plan) => plan.day),
    ...edition.lanes.flatMap((lane) => [lane.onSaleDate, ...lane.spans.map((span) => span.from)]),
  ]);
  return [life.day, ...days.filter((day) => day !== null)];
}

/** Places every format of a work in a lane of its own, edition below edition, along one line of time. */
export function lifeLayout(life: Life, width: number): LifeLayout {
  const scale = timeScale(daysOf(life), LIFE.left, width - 12);
  const at = (day: string | null) => (day === null ? null : scale.x(day));
  const bars = (lane: LifeLane): Bar[] =>
    lane.spans.map(({ standing, from, to }) => {
      const x = scale.x(from);
      return { standing, x, width: Math.max(LEAST, scale.x(to ?? life.day) - x) };
    });
  let y: number = LIFE.top;
  const editions = life.editions.map((edition): EditionBox => {
    const top = y;
    y += LIFE.heading;
    const lanes = edition.lanes.map((lane): LaneBox => {
      const box = { lane, top: y, barTop: y + LIFE.name, bars: bars(lane), saleX: at(lane.onSaleDate) };
      y += LIFE.lane;
      return box;
    });
    const box = {
      editionId: edition.editionId,
      label: edition.label,
      top,
      bottom: y,
      lanes,
      releaseX: at(edition.releaseDay),
      retirementX: at(edition.retirementDay),
      dropped: edition.dropped.map(({ kind, day }) => ({ kind, x: scale.x(day) })),
    };
    y += LIFE.gap;
    return box;
  });
  const byId = new Map(editions.map((edition) => [edition.editionId, edition]));
  return {
    width,
    height: y - LIFE.gap + LIFE.bottom,
    start: scale.start,
    end: scale.end,
    axisY: LIFE.top - 8,
    ticks: ticksOf(scale),
    todayX: scale.x(life.day),
    editions,
    successions: life.editions.flatMap(({ editionId, replacesId }) => {
      const from = byId.get(replacesId ?? 0);
      const to = byId.get(editionId);
      return from && to ? [{ from, to }] : [];
    }),
  };
}
