import type { ReportFindingKind, ReportOutcome } from '../../../../src/contract/reports.ts';
import { counted } from '../../catalogue/exchange/sheet/choices.ts';

/** Headings of the kinds of difference. */
export const KIND_TITLES: Record<ReportFindingKind, string> = {
  'still selling': 'Should be gone, and is still there',
  'only there': 'Listed there, not here',
  'only here': 'Selling here, not there',
  price: 'Another price',
  'on-sale date': 'Another on-sale date',
  title: 'Another title',
};

/** 'The report is kept: 2 new differences, 1 seen before, 3 mended.' */
export function outcomeInWords({ opened, stillOpen, closed, tasksEnded }: ReportOutcome): string {
  const parts = [
    counted(opened, 'new difference'),
    ...(stillOpen > 0 ? [`${stillOpen.toLocaleString()} told before and still there`] : []),
    ...(closed > 0 ? [`${closed.toLocaleString()} mended and closed`] : []),
    ...(tasksEnded > 0 ? [`${counted(tasksEnded, 'task')} ended`] : []),
  ];
  return `${parts.join(', ')}.`;
}
