import type { MoneyBar, MoneyByChannel } from '../../src/contract/pictures.ts';

export type MoneyPart = 'print' | 'channel' | 'kept' | 'unknown';

export interface MoneyRow {
  bar: MoneyBar;
  top: number;
  barTop: number;
  /** In the order in which they are paid: printing, the channel, then what is left. */
  parts: { part: MoneyPart; x: number; width: number }[];
  /** What printing and the channel take beyond the list price. */
  loss: { x: number; width: number } | null;
}

export interface MoneyLayout {
  width: number;
  height: number;
  start: number;
  channels: { channelId: number; name: string; top: number; rows: MoneyRow[]; hidden: number }[];
}

export const MONEY = { heading: 28, row: 36, name: 17, bar: 12, gap: 12 } as const;

function partsOf(bar: MoneyBar, start: number, perUnit: number): MoneyRow['parts'] {
  const { printCostMinor, channelMinor, keptMinor, listMinor } = bar;
  if (printCostMinor === null || channelMinor === null || keptMinor === null)
    return [{ part: 'unknown', x: start, width: listMinor * perUnit }];
  let x = start;
  const parts: [MoneyPart, number][] = [
    ['print', printCostMinor],
    ['channel', channelMinor],
    ['kept', keptMinor],
  ];
  return parts.flatMap(([part, amount]) => {
    if (amount <= 0) return [];
    const width = Math.min(amount, listMinor) * perUnit;
    const box = { part, x, width };
    x += width;
    return [box];
  });
}

/**
 * Places a bar for every listing under its channel, as long as its list price; prices of different currencies are not
 * compared, so that each currency's highest price fills the width.
 */
export function moneyLayout(money: MoneyByChannel, width: number): MoneyLayout {
  const start = 4;
  const bars = money.channels.flatMap((channel) => channel.bars);
  const highest = new Map<string, number>();
  for (const { currency, listMinor, printCostMinor, channelMinor } of bars) {
    const most = Math.max(listMinor, (printCostMinor ?? 0) + (channelMinor ?? 0), 1);
    highest.set(currency, Math.max(highest.get(currency) ?? 1, most));
  }
  let y = 0;
  const channels = money.channels.map((channel) => {
    const top = y;
    y += MONEY.heading;
    const rows = channel.bars.map((bar): MoneyRow => {
      const perUnit = (width - start - 8) / (highest.get(bar.currency) ?? 1);
      const loss = Math.min(0, bar.keptMinor ?? 0);
      const row = {
        bar,
        top: y,
        barTop: y + MONEY.name,
        parts: partsOf(bar, start, perUnit),
        loss: loss === 0 ? null : { x: start + bar.listMinor * perUnit, width: -loss * perUnit },
      };
      y += MONEY.row;
      return row;
    });
    y += MONEY.gap;
    return {
      channelId: channel.channelId,
      name: channel.name,
      top,
      rows,
      hidden: channel.total - rows.length,
    };
  });
  return { width, height: Math.max(1, y - MONEY.gap), start, channels };
}
