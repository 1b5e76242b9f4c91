import { useId } from 'react';
import type { Life, LifeLane } from '../../src/contract/pictures.ts';
import { formatDay } from '../lib/dates.ts';
import { type EditionBox, type LaneBox, LIFE, type LifeLayout, lifeLayout } from './life-layout.ts';
import { Patterns, Stretch, StretchLegend } from './patterns.tsx';
import { Picture, Spot } from './picture.tsx';
import { fitted } from './text-fit.ts';

/** 'planned from 2 Jan 2019, live from 2 May 2019' */
function spansInWords(lane: LifeLane): string {
  return lane.spans.map((span) => `${span.standing} from ${formatDay(span.from)}`).join(', ');
}

function laneInWords(lane: LifeLane): string {
  const isbn = lane.hyphenated === null ? 'no number yet' : `ISBN ${lane.hyphenated}`;
  const sale = lane.onSaleDate === null ? '' : `; on-sale date ${formatDay(lane.onSaleDate)}`;
  return `${lane.name}, ${isbn}: ${spansInWords(lane)}${sale}.`;
}

interface LaneProps {
  id: string;
  box: LaneBox;
  layout: LifeLayout;
  to: string;
  onLook: (text: string) => void;
}

function Lane({ id, box, layout, to, onLook }: LaneProps) {
  const { lane, top, barTop, bars, saleX } = box;
  const name = `${lane.name} · ${lane.hyphenated ?? 'no number yet'}`;
  return (
    <Spot
      to={to}
      text={laneInWords(lane)}
      onLook={onLook}
      caption={
        <>
          {' '}
          <text x={LIFE.left} y={top + 11}>
            {fitted(name, layout.end - LIFE.left, 12.5)}
          </text>
        </>
      }
    >
      <rect
        x={LIFE.left - 6}
        y={top - 2}
        width={layout.end - LIFE.left + 12}
        height={LIFE.lane - 4}
        className="spot-ground"
      />
      {bars.map((bar) => (
        <Stretch
          key={`${bar.standing}${bar.x}`}
          id={id}
          standing={bar.standing}
          x={bar.x}
          y={barTop}
          width={bar.width}
          height={LIFE.bar}
        />
      ))}
      {saleX === null ? null : (
        <path
          d={`M${saleX} ${barTop - 3}v${LIFE.bar + 6}M${saleX - 4} ${barTop - 3}h8`}
          className="line-sale"
        />
      )}
    </Spot>
  );
}

interface PlanMarkProps {
  x: number;
  y: number;
  kind: 'release' | 'retirement';
  dropped?: boolean | undefined;
}

/** A pennant for the day of a release plan, one hanging down for that of a retirement plan; struck through when dropped. */
function PlanMark({ x, y, kind, dropped = false }: PlanMarkProps) {
  const wing = kind === 'release' ? 'M0 0v-12h9l-2.5 3.5 2.5 3.5h-9' : 'M0-12v12h9l-2.5-3.5 2.5-3.5h-9';
  return (
    <g transform={`translate(${x} ${y})`} className={dropped ? 'mark-dropped' : undefined}>
      <path d={wing} className="mark" />
      {dropped ? <path d="M-4 2 12-14" className="mark" /> : null}
    </g>
  );
}

function EditionHead({ box, width }: { box: EditionBox; width: number }) {
  return (
    <>
      <text x={LIFE.left} y={box.top + 16} className="say-head">
        {fitted(box.label, width - LIFE.left, 15.5)}
      </text>
      {box.dropped.map(({ kind, x }) => (
        <PlanMark key={`${kind}${x}`} x={x} y={box.top + 20} kind={kind} dropped />
      ))}
      {box.releaseX === null ? null : <PlanMark x={box.releaseX} y={box.top + 20} kind="release" />}
      {box.retirementX === null ? null : <PlanMark x={box.retirementX} y={box.top + 20} kind="retirement" />}
    </>
  );
}

function Axis({ layout, day }: { layout: LifeLayout; day: string }) {
  const { axisY, height, todayX, width } = layout;
  const late = todayX > width - 90;
  return (
    <>
      {layout.ticks.map((tick) => (
        <g key={tick.label}>
          <path d={`M${tick.x} ${axisY}V${height - 4}`} className="line-soft" />
          <text x={tick.x + 3} y={axisY - 8} className="say-soft">
            {tick.label}
          </text>
        </g>
      ))}
      <path d={`M${todayX} ${axisY - 4}V${height - 4}`} className="line-today" />
      <text
        x={todayX + (late ? -5 : 5)}
        y={axisY + 6}
        textAnchor={late ? 'end' : 'start'}
        className="say-soft say-strong"
      >
        {day}
      </text>
    </>
  );
}

function draw(
  life: Life,
  width: number,
  id: string,
  href: (to: string) => string,
  onLook: (text: string) => void,
) {
  const layout = lifeLayout(life, width);
  const content = (
    <>
      <Patterns id={id} />
      <Axis layout={layout} day={life.day} />
      {layout.successions.map(({ from, to }) => (
        <path
          key={`${from.editionId}-${to.editionId}`}
          d={`M${LIFE.left - 8} ${from.top + 12}h-6V${to.top + 12}h6m-4-4l4 4-4 4`}
          className="line-bond"
        />
      ))}
      {layout.editions.map((edition) => (
        <g key={edition.editionId}>
          <EditionHead box={edition} width={layout.end} />
          {edition.lanes.map((box) => (
            <Lane
              key={box.lane.formatId}
              id={id}
              box={box}
              layout={layout}
              to={href(`/work/${life.workId}?format=${box.lane.formatId}`)}
              onLook={onLook}
            />
          ))}
        </g>
      ))}
    </>
  );
  return { height: layout.height, content };
}

function droppedInWords({
  kind,
  day,
  droppedOn,
  reason,
}: Life['editions'][number]['dropped'][number]): string {
  const because = reason === '' ? '' : ` (${reason})`;
  return ` A ${kind} planned for ${formatDay(day)} was dropped on ${formatDay(droppedOn)}${because}.`;
}

function Words({ life }: { life: Life }) {
  const plan = (day: string | null, what: string) =>
    day === null ? '' : ` ${what} planned for ${formatDay(day)}.`;
  return (
    <ul>
      {life.editions.map((edition) => (
        <li key={edition.editionId}>
          {edition.label}.
          {edition.replacesId === null
            ? ''
            : ` It replaces ${life.editions.find((one) => one.editionId === edition.replacesId)?.label ?? 'another edition'}.`}
          {plan(edition.releaseDay, 'Release')}
          {plan(edition.retirementDay, 'Retirement')}
          {edition.dropped.map(droppedInWords).join('')}
          <ul>
            {edition.lanes.map((lane) => (
              <li key={lane.formatId}>{laneInWords(lane)}</li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

/** The life of a work: a lane for every format across time, edition below edition, and the day that is looked at. */
export function LifePicture({ life, href }: { life: Life; href: (to: string) => string }) {
  const id = `life${useId().replaceAll(/\W/g, '')}`;
  const standings = new Set(
    life.editions.flatMap((edition) =>
      edition.lanes.flatMap((lane) => lane.spans.map((span) => span.standing)),
    ),
  );
  return (
    <Picture
      title={`The life of ${life.title}`}
      fileName={`life-of-${life.title.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-')}-${life.day}`}
      draw={(width, onLook) => draw(life, width, id, href, onLook)}
      legend={<StretchLegend id={`${id}legend`} of={standings} />}
      hint="Point at a lane, or move to it with the Tab key, to read its days. A crossed mark is the on-sale date, a pennant the day of a plan, struck through when the plan was dropped."
      words={<Words life={life} />}
    />
  );
}
