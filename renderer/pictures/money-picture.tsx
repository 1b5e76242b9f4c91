import { useId } from 'react';
import type { MoneyBar, MoneyByChannel } from '../../src/contract/pictures.ts';
import { formatMoney } from '../lib/money.ts';
import { MONEY, type MoneyLayout, type MoneyPart, type MoneyRow, moneyLayout } from './money-layout.ts';
import { Patterns } from './patterns.tsx';
import { Picture, Spot } from './picture.tsx';
import { fitted } from './text-fit.ts';

function barInWords(bar: MoneyBar): string {
  const said = (amount: number) => formatMoney(amount, bar.currency);
  const list = `${bar.label} (${bar.standing}): of ${said(bar.listMinor)}`;
  if (bar.keptMinor === null || bar.channelMinor === null)
    return `${list}, what is left cannot be told: no print cost is recorded in ${bar.currency}.`;
  const print = bar.printCostMinor ? `printing takes ${said(bar.printCostMinor)}, ` : '';
  const kept =
    bar.keptMinor < 0 ? `and ${said(-bar.keptMinor)} are lost` : `and ${said(bar.keptMinor)} are left`;
  return `${list}, ${print}the channel takes ${said(bar.channelMinor)} ${kept}.`;
}

function kept(bar: MoneyBar): string {
  if (bar.keptMinor === null) return 'cannot be told';
  return `${bar.keptMinor < 0 ? '−' : ''}${formatMoney(Math.abs(bar.keptMinor), bar.currency)}`;
}

const FILL: Partial<Record<MoneyPart | 'loss', string>> = { print: 'hatch', loss: 'cross' };

function Part({
  id,
  part,
  x,
  y,
  width,
}: {
  id: string;
  part: MoneyPart | 'loss';
  x: number;
  y: number;
  width: number;
}) {
  const fill = FILL[part];
  return (
    <rect
      x={x}
      y={y}
      width={width}
      height={MONEY.bar}
      className={`part-${part}`}
      {...(fill === undefined ? {} : { style: { fill: `url(#${id}-${fill})` } })}
    />
  );
}

interface BarProps {
  id: string;
  row: MoneyRow;
  layout: MoneyLayout;
  to: string;
  onLook: (text: string) => void;
}

function Bar({ id, row, layout, to, onLook }: BarProps) {
  const { bar, top, barTop } = row;
  const amount = kept(bar);
  return (
    <Spot
      to={to}
      text={barInWords(bar)}
      onLook={onLook}
      caption={
        <>
          {' '}
          <text x={layout.start} y={top + 11}>
            {fitted(bar.label, layout.width - amount.length * 8 - 20, 12.5)}
          </text>
          <text x={layout.width - 6} y={top + 11} textAnchor="end" className="say-strong">
            {amount}
          </text>
        </>
      }
    >
      <rect x={0} y={top - 2} width={layout.width} height={MONEY.row - 2} className="spot-ground" />
      {row.parts.map(({ part, x, width }) => (
        <Part key={part} id={id} part={part} x={x} y={barTop} width={width} />
      ))}
      {row.loss ? <Part id={id} part="loss" x={row.loss.x} y={barTop} width={row.loss.width} /> : null}
    </Spot>
  );
}

const MEANING: readonly [MoneyPart | 'loss', string][] = [
  ['kept', 'is left'],
  ['print', 'printing'],
  ['channel', 'the channel'],
  ['loss', 'is lost'],
  ['unknown', 'cannot be told'],
];

function Legend({ id }: { id: string }) {
  return (
    <ul className="drawing-legend" aria-label="What the parts of a bar mean">
      {MEANING.map(([part, means]) => (
        <li key={part}>
          <svg width="30" height="14" viewBox="0 0 30 14" aria-hidden="true" focusable="false">
            <Patterns id={`${id}-${part}`} />
            <Part id={`${id}-${part}`} part={part} x={2} y={1} width={26} />
          </svg>
          <span>{means}</span>
        </li>
      ))}
    </ul>
  );
}

/** What of the list price is left on every listing, channel by channel; the bars that keep least stand first. */
export function MoneyPicture({ money, href }: { money: MoneyByChannel; href: (to: string) => string }) {
  const id = `money${useId().replaceAll(/\W/g, '')}`;
  return (
    <Picture
      title="What a copy brings, by channel"
      fileName={`money-by-channel-${money.day}`}
      legend={<Legend id={`${id}legend`} />}
      hint="A bar is as long as the list price. Point at one, or move to it with the Tab key, to read its parts."
      draw={(width, onLook) => {
        const layout = moneyLayout(money, width);
        const content = (
          <>
            <Patterns id={id} />
            {layout.channels.map((channel) => (
              <g key={channel.channelId}>
                <text x={layout.start} y={channel.top + 17} className="say-head">
                  {fitted(channel.name, width - 120, 15.5)}
                </text>
                {channel.hidden > 0 ? (
                  <text x={width - 6} y={channel.top + 17} textAnchor="end" className="say-soft">
                    and {channel.hidden.toLocaleString()} that keep more
                  </text>
                ) : null}
                {channel.rows.map((row) => (
                  <Bar
                    key={row.bar.listingId}
                    id={id}
                    row={row}
                    layout={layout}
                    to={href(`/work/${row.bar.workId}?format=${row.bar.formatId}`)}
                    onLook={onLook}
                  />
                ))}
              </g>
            ))}
          </>
        );
        return { height: layout.height, content };
      }}
      words={
        <ul>
          {money.channels.map((channel) => (
            <li key={channel.channelId}>
              {channel.name}
              <ul>
                {channel.bars.map((bar) => (
                  <li key={bar.listingId}>{barInWords(bar)}</li>
                ))}
              </ul>
            </li>
          ))}
        </ul>
      }
    />
  );
}
