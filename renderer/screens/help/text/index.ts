import type { TopicId } from '../topics.ts';
import { AUDIT } from './audit.ts';
import { CAUTIONS } from './cautions.ts';
import { COURSE } from './course.ts';
import { EDITIONS } from './editions.ts';
import { LOCKS } from './locks.ts';
import { MONEY } from './money.ts';
import { NUMBERS } from './numbers.ts';
import { RELEASE } from './release.ts';
import { RETIRING } from './retiring.ts';
import { STANDINGS } from './standings.ts';
import type { HelpText } from './types.ts';

/** Every page of the help. */
export const TEXTS: Record<TopicId, HelpText> = {
  course: COURSE,
  numbers: NUMBERS,
  editions: EDITIONS,
  locks: LOCKS,
  release: RELEASE,
  standings: STANDINGS,
  money: MONEY,
  retiring: RETIRING,
  audit: AUDIT,
  cautions: CAUTIONS,
};
