import type { Subject } from '../../contract/editions.ts';
import { AUDIENCE_CODES, audienceOf, ownScheme, subjectScheme } from '../../rules/onix/codes.ts';
import { all, type Element, first, holdsOnly, text, textOf } from './element.ts';
import { agesKey, keywordsKey, subjectKey } from './keys.ts';
import { bind, bounded, cover, keep, type Reading } from './read-product.ts';

const BLOCK = 'DescriptiveDetail';

/** Language of the text (List 22 code 01; of the sound, 08, where nothing is written). */
export function readLanguage(to: Reading, block: Element): void {
  const { edition } = to.product;
  const languages = all(block, 'Language');
  const valid = (role: string) =>
    languages.find(
      (element) => text(element, 'LanguageRole') === role && /^[a-z]{3}$/.test(text(element, 'LanguageCode')),
    );
  const chosen = valid('01') ?? valid('08');
  edition.language = chosen ? text(chosen, 'LanguageCode') : to.house.language;
  if (!chosen)
    to.product.notes.push(`No language of the text is told; '${edition.language}' is taken for it.`);
  for (const element of languages) {
    if (element !== chosen) keep(to, BLOCK, element);
    else if (!holdsOnly(element, ['LanguageRole', 'LanguageCode']) || text(element, 'LanguageRole') !== '01')
      bind(to, BLOCK, element, edition.language);
  }
}

const THEMA = /^[A-Z1-6][A-Z0-9]*(-[A-Z0-9]*)*$/;

/** A subject in the catalogue's own terms, or null for schemes it does not hold. 23 and 24 are a house's own. */
function subjectOf(to: Reading, element: Element): Subject | null {
  const code = text(element, 'SubjectCode');
  const given = text(element, 'SubjectHeadingText');
  const identifier = text(element, 'SubjectSchemeIdentifier');
  const own = identifier === '23' || identifier === '24' ? 'own' : ownScheme(identifier);
  if (own === null || code === '' || code.length > 2000) return null;
  if (own === 'bisac' && !/^[A-Z]{3}\d{6}$/.test(code)) return null;
  if (own === 'thema' && (!THEMA.test(code) || subjectScheme('thema', code) !== identifier)) return null;
  return { scheme: own, code, heading: bounded(to, given, 'subject heading', 20_000) };
}

/** Whether our own subject would read the same. */
function isOwnForm(to: Reading, element: Element, subject: Subject, main: boolean): boolean {
  const names = ['MainSubject', 'SubjectSchemeIdentifier', 'SubjectCode', 'SubjectHeadingText'];
  if (subject.scheme === 'own') {
    const named = text(element, 'SubjectSchemeName') === `${to.house.sender} subjects`;
    return named && holdsOnly(element, [...names, 'SubjectSchemeName']);
  }
  return holdsOnly(element, names) && (first(element, 'MainSubject') !== undefined) === main;
}

/** The words of a keyword subject. */
function wordsOf(element: Element): string[] {
  const list = text(element, 'SubjectHeadingText');
  return list
    .split(list.includes(';') ? ';' : ',')
    .map((word) => word.trim())
    .filter((word) => word !== '' && word.length <= 2000);
}

function readKeywords(to: Reading, subjects: Element[]): void {
  const [chosen, ...others] = subjects;
  const keywords = subjects.flatMap(wordsOf).slice(0, 200);
  to.product.edition.keywords = keywords;
  if (!chosen || keywords.length === 0) {
    for (const element of subjects) keep(to, BLOCK, element);
    return;
  }
  const plain =
    others.length === 0 &&
    holdsOnly(chosen, ['SubjectSchemeIdentifier', 'SubjectHeadingText']) &&
    text(chosen, 'SubjectHeadingText') === keywords.join('; ');
  if (plain) return;
  // The further lists of keywords go back beside the first one, as long as none was changed.
  bind(to, BLOCK, chosen, keywordsKey(keywords), 'Subject', others);
}

/** Subjects of the schemes the catalogue holds, in order, and keywords. */
export function readSubjects(to: Reading, block: Element): void {
  const begun = new Set<string>();
  const list: Subject[] = [];
  const subjects = all(block, 'Subject');
  to.product.edition.subjects = list;
  for (const element of subjects) {
    if (text(element, 'SubjectSchemeIdentifier') === '20') continue;
    const subject = list.length < 50 ? subjectOf(to, element) : null;
    if (subject === null) {
      keep(to, BLOCK, element);
      continue;
    }
    list.push(subject);
    const scheme = subjectScheme(subject.scheme, subject.code);
    const main = (scheme === '93' || scheme === '10') && !begun.has(scheme);
    begun.add(scheme);
    if (!isOwnForm(to, element, subject, main)) bind(to, BLOCK, element, subjectKey(subject, main));
  }
  readKeywords(
    to,
    subjects.filter((element) => text(element, 'SubjectSchemeIdentifier') === '20'),
  );
}

const age = (value: string) => (/^\d{1,3}$/.test(value) && Number(value) <= 120 ? Number(value) : null);

/** The ages of a range of interest in years (List 30 code 17), or null. */
function agesIn(range: Element): { ageFrom: number | null; ageTo: number | null } | null {
  if (text(range, 'AudienceRangeQualifier') !== '17') return null;
  const precisions = all(range, 'AudienceRangePrecision').map((part) => textOf(part));
  const values = all(range, 'AudienceRangeValue').map((part) => age(textOf(part)));
  const at = (precision: string) => {
    const index = precisions.indexOf(precision);
    return index < 0 ? null : (values[index] ?? null);
  };
  const exact = at('01');
  const ages = exact === null ? { ageFrom: at('03'), ageTo: at('04') } : { ageFrom: exact, ageTo: exact };
  if (ages.ageFrom === null && ages.ageTo === null) return null;
  return ages.ageFrom !== null && ages.ageTo !== null && ages.ageFrom > ages.ageTo ? null : ages;
}

/** Audience (List 28) and the range of ages. */
export function readAudience(to: Reading, block: Element): void {
  const { edition } = to.product;
  const told = [...all(block, 'Audience'), ...all(block, 'AudienceCode')];
  const codeOf = (element: Element) => {
    if (element.name === 'AudienceCode') return textOf(element);
    return text(element, 'AudienceCodeType') === '01' ? text(element, 'AudienceCodeValue') : '';
  };
  const chosen = told.find((element) => audienceOf(codeOf(element)) !== null);
  edition.audience = (chosen && audienceOf(codeOf(chosen))) ?? 'general';
  for (const element of told) {
    const plain = element.name === 'Audience' && AUDIENCE_CODES[edition.audience] === codeOf(element);
    if (element !== chosen) keep(to, BLOCK, element);
    else if (!plain) bind(to, BLOCK, element, edition.audience, 'Audience');
  }
  // Where none of the audiences is one of ours, ours stays unsaid.
  if (!chosen && told.length > 0) cover(to, BLOCK, 'Audience', 'general');
  const ranges = all(block, 'AudienceRange').map((element) => ({ element, ages: agesIn(element) }));
  const range = ranges.find(({ ages }) => ages !== null);
  edition.ageFrom = range?.ages?.ageFrom ?? null;
  edition.ageTo = range?.ages?.ageTo ?? null;
  for (const { element, ages } of ranges) {
    if (element !== range?.element || ages === null) keep(to, BLOCK, element);
    else if (Object.keys(element.attributes).length > 0) bind(to, BLOCK, element, agesKey(ages));
  }
}
