import type { Backup } from '../../../../src/contract/backups.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';

/** Why a backup was taken, as the table says it. */
export const KIND_WORDS: Record<Backup['kind'], string> = {
  daily: 'Daily',
  'by hand': 'By hand',
  'before upgrade': 'Before an upgrade',
  'before restore': 'Before a restore',
};

/** The moment of a backup in the machine's own time zone, to the second: several may be taken in a minute. */
export function momentOf(at: string, locale?: string): string {
  return new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'medium' }).format(new Date(at));
}

/** '512 kB', '3.4 MB': thousands, as files are measured in the SI. */
export function fileSize(bytes: number, locale?: string): string {
  if (bytes < 1_000_000) return `${Math.ceil(bytes / 1000).toLocaleString(locale)} kB`;
  return `${(bytes / 1_000_000).toLocaleString(locale, { maximumFractionDigits: 1 })} MB`;
}

/** What restoring would lose, in one sentence. */
export function lossInWords(
  preview: Pick<OutputOf<'backups.preview'>, 'sameStory' | 'lostTotal'>,
  locale?: string,
): string {
  const { sameStory, lostTotal } = preview;
  if (!sameStory)
    return 'This backup is no earlier state of the catalogue as it stands: the two went different ways. All that is here now would give way to what the backup holds.';
  if (lostTotal === 0) return 'Nothing was changed since, so nothing would be lost.';
  if (lostTotal === 1) return 'One change made since would be lost.';
  return `${lostTotal.toLocaleString(locale)} changes made since would be lost.`;
}

/** Whether a text is the full path of a folder: from the root, from a drive, or of a share in the network. */
export function isFullPath(text: string): boolean {
  return /^(?:\/|[A-Za-z]:[\\/]|\\\\[^\\])/.test(text.trim());
}
