import { createHash } from 'node:crypto';
import type { Contributor, EditionFields, Subject } from '../../contract/editions.ts';
import { plainDescription } from './xhtml.ts';

// The keys under which a kept part stands for a value of the catalogue. Reader and writer share them, so that a
// part is given back as it came as long as the value is the same.

export const titleKey = (edition: Pick<EditionFields, 'title' | 'subtitle'>) =>
  `${edition.title}|${edition.subtitle}`;
export const seriesKey = (edition: Pick<EditionFields, 'series' | 'seriesNumber'>) =>
  `${edition.series}|${edition.seriesNumber}`;
export const contributorKey = ({ role, name }: Contributor) => `${role}|${name}`;
export const subjectKey = ({ scheme, code, heading }: Subject, main: boolean) =>
  `${scheme}|${code}|${heading}|${main ? 'main' : ''}`;
export const keywordsKey = (keywords: readonly string[]) => `keywords|${keywords.join('|')}`;
export const extentKey = (type: string, value: number) => `${type}|${value}`;
export const measureKey = (type: string, um: number) => `${type}|${um}`;
export const agesKey = (edition: Pick<EditionFields, 'ageFrom' | 'ageTo'>) =>
  `${edition.ageFrom ?? ''}-${edition.ageTo ?? ''}`;
/** What a description says, whatever its marks, in brief. */
export const descriptionKey = (description: string) =>
  createHash('sha256').update(plainDescription(description)).digest('base64url');
