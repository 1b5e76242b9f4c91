/** What is said of one file at most, so that a broken one does not fill a page. */
const MOST_FAULTS = 200;
const MOST_UNREAD = 50;
const LONGEST = 500;

/** Gathers sentences, each once: faults of the file, and what could not be read of it. */
export class Findings {
  readonly faults: string[] = [];
  readonly unread: string[] = [];

  fault(sentence: string): void {
    add(this.faults, sentence, MOST_FAULTS);
  }

  skipped(sentence: string): void {
    add(this.unread, sentence, MOST_UNREAD);
  }
}

function add(list: string[], sentence: string, most: number): void {
  const short = sentence.length > LONGEST ? `${sentence.slice(0, LONGEST - 1)}…` : sentence;
  if (list.length < most && !list.includes(short)) list.push(short);
}
