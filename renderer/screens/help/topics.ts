/** The pages of the help, in their order; the last part of their routes: `/help/locks`. */
export const TOPIC_IDS = [
  'course',
  'numbers',
  'editions',
  'locks',
  'release',
  'standings',
  'money',
  'retiring',
  'audit',
  'cautions',
] as const;
export type TopicId = (typeof TOPIC_IDS)[number];

export interface TopicHead {
  title: string;
  /** What a link beside the matter is called. */
  link: string;
  /** The page in two or three sentences, also shown where a dialog has a word to explain. */
  short: string;
}

/** What is known of each page before any of it is fetched. */
export const TOPICS: Record<TopicId, TopicHead> = {
  course: {
    title: 'From the number to the last copy',
    link: 'About the way of a book',
    short:
      'The way of a book through this program, and the words it uses: work, edition, format, channel, listing.',
  },
  numbers: {
    title: 'Numbers',
    link: 'About numbers',
    short:
      'An ISBN names one edition in one product form, and does so for ever: a number is never used again, not even after a mistake. You buy numbers in blocks from your ISBN agency; the check digit finds slips of the pen.',
  },
  editions: {
    title: 'New edition or reprint',
    link: 'About new editions and reprints',
    short:
      'What a buyer would call another book takes a new number: changed text, another title, another form. A reprint, a corrected misprint, a new price or a new cover keep the old one.',
  },
  locks: {
    title: 'What locks, and why',
    link: 'Why does this lock?',
    short:
      'With the first submission to a channel, what identifies the book locks: number, form, title, people, language, imprint. Channels keep it as it was first sent, so a change here would only hide the difference. Description, prices and terms stay open.',
  },
  release: {
    title: 'The release day',
    link: 'About release days',
    short:
      'The publication date is the nominal day; only an on-sale date with an embargo holds sales back until then. Pre-orders need the data weeks ahead, and each channel needs its working days between submission and sale.',
  },
  standings: {
    title: 'Standings of formats and listings',
    link: 'About standings',
    short:
      'A listing is one format on one channel and moves from unsent to gone by steps that you record. The standing of a format follows from its listings and is never typed in.',
  },
  money: {
    title: 'Prices and print costs',
    link: 'About prices and print costs',
    short:
      'A copy keeps its list price less the discount of the channel and the cost of printing it. Print-cost cards say what a channel asks for a book of any page count; the channel’s own calculator and terms prevail.',
  },
  retiring: {
    title: 'Retiring an edition',
    link: 'About retiring an edition',
    short:
      'Let the new edition sell first, then ask every channel in writing to stop selling the old one, and look until it is gone. The old number stays valid for ever; copies may come back for months, and second-hand copies may be offered for ever.',
  },
  audit: {
    title: 'The audit and the journal',
    link: 'About the audit',
    short:
      'The audit holds every record against its rules and says what is wrong, how grave it is, on whose word, and how to mend it. The journal keeps every change and cannot be rewritten.',
  },
  cautions: {
    title: 'Cautions and sources',
    link: 'About cautions and sources',
    short:
      'This program advises; it does not decide. Your ISBN agency, the terms of a channel and a professional prevail. Here stand the sources that the help and the rules rest on.',
  },
};

/** Whether the last part of a route names a page. */
export function isTopic(text: string | undefined): text is TopicId {
  return TOPIC_IDS.some((id) => id === text);
}

/** The route of a page, or of a section of it. */
export function helpRoute(topic: TopicId, section?: string): string {
  return section === undefined ? `/help/${topic}` : `/help/${topic}/${section}`;
}
