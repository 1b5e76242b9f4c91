import type { Contributor, Edition } from '../../../../src/contract/editions.ts';
import type { FormatFields } from '../../../../src/contract/formats.ts';
import type { InputOf } from '../../../../src/contract/index.ts';
import { namedContributors } from './contributors-input.tsx';

/** A format the old edition did not have. */
export interface AddedFormat {
  key: number;
  form: string;
  formDetail: string | null;
  caseKind: FormatFields['caseKind'];
  largePrint: boolean;
}

/** The next edition while it is prepared. */
export interface NextDraft {
  /** Ids of the formats that come along. */
  carry: number[];
  add: AddedFormat[];
  takeNumbers: boolean;
  blockId: number | undefined;
  title: string;
  subtitle: string;
  imprint: string;
  /** Empty lets it follow from the number. */
  statement: string;
  contributors: Contributor[];
  carryListings: boolean;
}

const ENDED: readonly string[] = ['retired', 'cancelled'];

/** Formats of the old edition that can come along. */
export function carryable(edition: Edition) {
  return edition.formats.filter((format) => format.standing !== 'cancelled');
}

/** What is proposed: every format that is not at its end, with numbers and the same channels. */
export function proposeNext(
  edition: Edition,
  added: readonly Pick<AddedFormat, 'form' | 'formDetail' | 'largePrint'>[] = [],
): NextDraft {
  const running = carryable(edition).filter((format) => !ENDED.includes(format.standing));
  return {
    carry: (running.length > 0 ? running : carryable(edition)).map((format) => format.id),
    add: added.map(({ form, formDetail, largePrint }, key) => ({
      key,
      form,
      formDetail,
      caseKind: null,
      largePrint,
    })),
    takeNumbers: true,
    blockId: undefined,
    title: edition.title,
    subtitle: edition.subtitle,
    imprint: edition.imprint,
    statement: '',
    contributors: edition.contributors,
    carryListings: true,
  };
}

/** How many formats the next edition will have. */
export function formatCount(draft: NextDraft): number {
  return draft.carry.length + draft.add.filter((added) => added.form !== '').length;
}

/** The command's input; only what differs from the old edition is sent as a change. */
export function nextInput(edition: Edition, draft: NextDraft): InputOf<'editions.prepareNext'> {
  const contributors = namedContributors(draft.contributors);
  const same = JSON.stringify(contributors) === JSON.stringify(edition.contributors);
  return {
    editionId: edition.id,
    carry: draft.carry,
    add: draft.add
      .filter((added) => added.form !== '')
      .map(({ form, formDetail, caseKind, largePrint }) => ({ form, formDetail, caseKind, largePrint })),
    takeNumbers: draft.takeNumbers,
    ...(draft.blockId === undefined ? {} : { blockId: draft.blockId }),
    carryListings: draft.carryListings,
    changes: {
      ...(draft.title === edition.title ? {} : { title: draft.title }),
      ...(draft.subtitle === edition.subtitle ? {} : { subtitle: draft.subtitle }),
      ...(draft.imprint === edition.imprint ? {} : { imprint: draft.imprint }),
      ...(draft.statement.trim() === '' ? {} : { statement: draft.statement }),
      ...(same ? {} : { contributors }),
    },
  };
}
