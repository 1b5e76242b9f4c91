import type { CheckLine, EpubFacts } from '../../contract/proof-checks/facts.ts';
import { textLineOf } from './line.ts';
import type { ProofRecord } from './record.ts';
import { holdsText, nearName, sameName } from './wording.ts';

type Recorded = ProofRecord['contributors'][number];
type Written = EpubFacts['creators'][number];

/** Codes of the MARC relators that say what a role of ONIX List 17 says (from memory); others are not judged. */
const RELATORS: Readonly<Record<string, readonly string[]>> = {
  A01: ['aut', 'cre'],
  A02: ['aut', 'ctb'],
  A12: ['ill', 'art'],
  A13: ['pht'],
  A15: ['aui', 'wpr'],
  A19: ['aft', 'aui'],
  A23: ['aui', 'wfw'],
  A24: ['aui', 'win'],
  A36: ['cov', 'bkd'],
  A39: ['ctg'],
  B01: ['edt'],
  B02: ['edt', 'red', 'rev'],
  B04: ['abr'],
  B05: ['adp'],
  B06: ['trl'],
  C01: ['com', 'edt'],
  E03: ['nrt'],
  E07: ['nrt'],
};
const KNOWN = new Set(Object.values(RELATORS).flat());

/** Whether a written role is plainly another than the recorded one; no role says nothing against it. */
function clashes(written: Written, { role }: Recorded): boolean {
  const code = written.role.toLowerCase();
  if (/^[a-z]\d\d$/.test(code)) return code !== role.toLowerCase();
  const fitting = RELATORS[role];
  return fitting !== undefined && KNOWN.has(code) && !fitting.includes(code);
}

/** Those who made the book as such: its authors, or its editors where it has none (common practice, no source). */
function mainOf(record: ProofRecord): Recorded[] {
  const by = (role: string) => record.contributors.filter((one) => one.role === role);
  const authors = by('A01');
  return authors.length > 0 ? authors : by('B01');
}

interface Judged {
  trouble: 'differs' | 'not found' | null;
  advice: string;
}

/** One recorded person against those that the file names. */
function judge(person: Recorded, facts: EpubFacts, anywhere: boolean): Judged {
  const written = facts.creators.filter(({ name }) => sameName(name, person.name));
  if (written.some((one) => !clashes(one, person))) return { trouble: null, advice: '' };
  if (written[0] !== undefined)
    return {
      trouble: 'differs',
      advice: `${person.name} is recorded as ${person.roleName.toLowerCase()} and stands in the file in another role (${written[0].role}).`,
    };
  const near = facts.creators.find(({ name }) => nearName(name, person.name));
  if (near !== undefined)
    return {
      trouble: 'differs',
      advice: `“${near.name}” may be a slip for ${person.name}; write it as recorded.`,
    };
  if (anywhere && facts.lines.some(({ text }) => holdsText(text, person.name)))
    return { trouble: null, advice: '' };
  return {
    trouble: 'not found',
    advice: `${person.name} (${person.roleName.toLowerCase()}) is not named; have it added.`,
  };
}

const names = (people: readonly { name: string }[]) => people.map(({ name }) => name).join(', ');

/** Creators that are recorded nowhere: a wrong name under the right number is likely the wrong book. */
function strangers(facts: EpubFacts, record: ProofRecord): Written[] {
  return facts.creators.filter(
    ({ contributor, name, role }) =>
      !contributor &&
      ['', 'aut', 'a01'].includes(role.toLowerCase()) &&
      !record.contributors.some((one) => sameName(one.name, name) || nearName(one.name, name)),
  );
}

function authorsLine(facts: EpubFacts, record: ProofRecord, main: readonly Recorded[]): CheckLine {
  const judged = main.map((person) => judge(person, facts, false));
  const extra = strangers(facts, record);
  const found = names(facts.creators.filter(({ contributor }) => !contributor));
  const unknown = extra.map(({ name }) => `${name} is not on record as a contributor.`);
  const advice = [...judged.map((one) => one.advice).filter(Boolean), ...unknown].join(' ');
  const differs = extra.length > 0 || judged.some(({ trouble }) => trouble === 'differs');
  const missing = judged.some(({ trouble }) => trouble === 'not found');
  const state = differs || (missing && found !== '') ? 'differs' : missing ? 'not found' : 'agreed';
  return textLineOf('epub.authors', 'Authors', state, { expected: names(main), found, advice });
}

/** Who made the book, and who else is on record, against the file's own data; the rest may stand in print alone. */
export function peopleLines(facts: EpubFacts, record: ProofRecord): CheckLine[] {
  const main = mainOf(record);
  const rest = record.contributors.filter((person) => !main.includes(person));
  const judged = rest.map((person) => judge(person, facts, true));
  const worst = (['differs', 'not found'] as const).find((state) =>
    judged.some(({ trouble }) => trouble === state),
  );
  const others = textLineOf('epub.contributors', 'Other contributors', worst ?? 'agreed', {
    expected: rest.map(({ name, roleName }) => `${name} (${roleName.toLowerCase()})`).join(', '),
    found: names(facts.creators.filter(({ name }) => !main.some((one) => sameName(one.name, name)))),
    advice: judged
      .map(({ advice }) => advice)
      .filter(Boolean)
      .join(' '),
  });
  return [
    ...(main.length > 0 ? [authorsLine(facts, record, main)] : []),
    ...(rest.length > 0 ? [others] : []),
  ];
}
