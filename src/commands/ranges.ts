import { Refusal } from '../contract/refusal.ts';
import { RangeMessageError, refuseOlder } from '../exchange/ranges/message.ts';
import { readRangeMessage } from '../exchange/ranges/read.ts';
import { adoptRangeTable, rangeFacts } from '../records/ranges.ts';
import { rangeTable } from '../rules/isbn/index.ts';
import { writeRangeTable } from '../store/ranges.ts';
import type { Commands } from './context.ts';

export const rangeCommands = {
  'ranges.load': ({ db, today }, { xml }) => {
    try {
      const data = readRangeMessage(new TextEncoder().encode(xml));
      refuseOlder(data, rangeTable());
      writeRangeTable(db, today, JSON.stringify(data));
    } catch (error) {
      if (error instanceof RangeMessageError) throw new Refusal('BAD_INPUT', error.message, 'xml');
      throw error;
    }
    adoptRangeTable(db);
    return rangeFacts(db);
  },
} satisfies Commands<'ranges.load'>;
