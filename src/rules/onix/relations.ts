import { type FormatStanding, madeOf } from '../../contract/terms.ts';

/** A format as others relate to it. */
export interface Kin {
  form: string;
  formDetail: string | null;
  standing: FormatStanding;
  isbn13: string | null;
}

type Numbered<K extends Kin> = K & { isbn13: string };

/** Those that can be named to others: with a number, and not cancelled. */
function nameable<K extends Kin>(kin: readonly K[]): Numbered<K>[] {
  return kin.filter((k): k is Numbered<K> => k.isbn13 !== null && k.standing !== 'cancelled');
}

/** The formats of another edition that take the place of this one: the same form, else the same kind of product. */
function counterparts<K extends Kin>(own: Kin, others: readonly K[]): Numbered<K>[] {
  const named = nameable(others);
  const same = named.filter((k) => k.form === own.form && k.formDetail === own.formDetail);
  if (same.length > 0) return same;
  const form = named.filter((k) => k.form === own.form);
  return form.length > 0 ? form : named.filter((k) => madeOf(k.form) === madeOf(own.form));
}

/** How a format of the same edition relates, List 51: 06 always, 27 and 13 between print and electronic. */
function siblingCodes(own: Kin, other: Kin): string[] {
  const [from, to] = [madeOf(own.form), madeOf(other.form)];
  if (from === 'print' && to === 'e-book') return ['06', '27'];
  if (from === 'e-book' && to === 'print') return ['06', '13'];
  return ['06'];
}

/**
 * The related products of a format: what it replaces (03, also: is new edition of), what replaces it (05), and the
 * other formats of its edition. Every code has its inverse at the other end.
 */
export function relationsOf<K extends Kin>(
  own: K,
  kin: { siblings: readonly K[]; replaced: readonly K[]; replacing: readonly K[] },
): { codes: string[]; isbn13: string }[] {
  const mutual = (others: readonly K[]) =>
    counterparts(own, others).filter(
      (other) => counterparts(other, kin.siblings).includes(own as Numbered<K>) || own.isbn13 === null,
    );
  return [
    ...mutual(kin.replaced).map(({ isbn13 }) => ({ codes: ['03'], isbn13 })),
    ...mutual(kin.replacing).map(({ isbn13 }) => ({ codes: ['05'], isbn13 })),
    ...nameable(kin.siblings)
      .filter((other) => other !== own)
      .map((other) => ({ codes: siblingCodes(own, other), isbn13: other.isbn13 })),
  ];
}

/** Whether a successor is on sale or coming, and whether another format of the same edition is. */
export function waysOn(own: Kin, siblings: readonly Kin[], replacing: readonly Kin[]) {
  const alive = (kin: Kin) => kin.standing !== 'retired' && kin.standing !== 'cancelled';
  return {
    successor: counterparts(own, replacing).some(alive),
    otherFormat: nameable(siblings).some((other) => other !== own && alive(other)),
  };
}
