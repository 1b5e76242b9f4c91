import { z } from 'zod';
import { paper, printerFigures } from './covers.ts';
import { anyText, filledText, isoDate, money, operation } from './operation.ts';

export const settings = z.object({
  catalogueName: filledText,
  publisher: anyText,
  imprint: anyText,
  language: z.string().regex(/^[a-z]{3}$/, { error: 'Choose a language (three letters, ISO 639-2/B).' }),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, { error: 'Write the currency as three capital letters, for example EUR.' }),
  lengthUnit: z.enum(['mm', 'in']),
  /** Days after which an unanswered removal request is a finding. */
  removalOverdueDays: z.int().min(1).max(365),
  /** Days that are not worked, beside Saturdays and Sundays. */
  holidays: z.array(isoDate).max(1000),
  /** Days of the week that are worked: 1 is Monday, 7 is Sunday. */
  workingDays: z.array(z.int().min(1).max(7)).min(1).max(7),
  /** ISO 3166-1 country of publication; empty where it is not told. */
  countryOfPublication: z
    .string()
    .regex(/^([A-Z]{2})?$/, { error: 'Write the country as two capital letters, for example GB.' }),
  /** Where the press may sell its books: said in every ONIX record. `only` and `except` name countries. */
  salesRights: z
    .object({
      scope: z.enum(['unstated', 'world', 'only', 'except']),
      countries: z
        .array(
          z
            .string()
            .regex(/^[A-Z]{2}$/, { error: 'Write countries as two capital letters, for example GB IE.' }),
        )
        .max(249),
    })
    .refine((rights) => new Set(rights.countries).size === rights.countries.length, {
      error: 'Name each country once.',
      path: ['countries'],
    })
    .refine((rights) => rights.scope !== 'only' || rights.countries.length > 0, {
      error: 'Name the countries where your books may be sold.',
      path: ['countries'],
    }),
  /** The user's own papers, beside the usual ones. */
  papers: z.array(paper).max(200),
  /** The usual printer's figures for covers, where they differ from ours. */
  printerFigures,
  /** How prices end, by currency: the last digits in minor units, '99' for 12.99 or '999' for 9.99 and 19.99. */
  priceEndings: z
    .array(
      z.object({
        currency: money.shape.currency,
        endings: z
          .array(
            z
              .string()
              .regex(/^[0-9]{1,4}$/, { error: 'Write an ending as its last digits, for example .99.' }),
          )
          .min(1, { error: 'Write at least one ending, or take the currency out.' })
          .max(10, { error: 'Keep at most ten endings for a currency.' }),
      }),
    )
    .max(50)
    .refine((all) => new Set(all.map(({ currency }) => currency)).size === all.length, {
      error: 'Name each currency once.',
    }),
  theme: z.enum(['auto', 'light', 'dark']),
  /** Where backups are kept; empty for a folder beside the catalogue file. */
  backupFolder: anyText,
  /** A calendar file that is written anew after each change: tasks as to-dos, or as all-day events. */
  calendar: z.enum(['off', 'tasks', 'events']),
  /** Where it lies; empty for beside the catalogue file. */
  calendarFolder: anyText,
});
export type Settings = z.infer<typeof settings>;

export const DEFAULT_SETTINGS: Settings = {
  catalogueName: 'My catalogue',
  publisher: '',
  imprint: '',
  language: 'eng',
  currency: 'EUR',
  lengthUnit: 'mm',
  removalOverdueDays: 14,
  holidays: [],
  workingDays: [1, 2, 3, 4, 5],
  countryOfPublication: '',
  salesRights: { scope: 'unstated', countries: [] },
  papers: [],
  printerFigures: {},
  priceEndings: [],
  theme: 'auto',
  backupFolder: '',
  calendar: 'off',
  calendarFolder: '',
};

export const getSettings = operation({
  name: 'settings.get',
  kind: 'query',
  summary: 'The settings of this catalogue.',
  input: z.object({}),
  output: settings,
  errors: [],
});

export const updateSettings = operation({
  name: 'settings.update',
  kind: 'command',
  summary: 'Change settings of this catalogue.',
  input: settings.partial(),
  output: settings,
  errors: [],
});
