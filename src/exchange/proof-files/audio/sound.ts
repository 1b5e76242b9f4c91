import { once } from 'node:events';
import { PassThrough } from 'node:stream';
import { type IAudioMetadata, parseStream } from 'music-metadata';

/** What one sound file says of itself. */
export interface Sound {
  /** Null where it could not be told. */
  seconds: number | null;
  album: string;
  title: string;
  /** Every text among its tags, to be looked through for numbers. */
  texts: string[];
}

/** The kinds that are read, by the ending of the name. */
const KINDS: Readonly<Record<string, string>> = {
  mp3: 'audio/mpeg',
  m4b: 'audio/mp4',
  m4a: 'audio/mp4',
  wav: 'audio/wav',
  flac: 'audio/flac',
};

const ending = (name: string) => /\.([a-z0-9]{2,4})$/i.exec(name)?.[1]?.toLowerCase() ?? '';

/** Whether a name is that of a sound file. */
export const isSound = (name: string) => Object.hasOwn(KINDS, ending(name));

/** The kind by the first bytes, for a file whose name says nothing. */
function kindOf(first: Buffer, name: string): string {
  const head = first.toString('latin1', 0, 12);
  if (head.startsWith('fLaC')) return 'audio/flac';
  if (head.startsWith('RIFF')) return 'audio/wav';
  if (head.slice(4, 8) === 'ftyp') return 'audio/mp4';
  if (head.startsWith('ID3') || (first[0] === 0xff && ((first[1] ?? 0) & 0xe0) === 0xe0)) return 'audio/mpeg';
  return KINDS[ending(name)] ?? 'audio/mpeg';
}

const MOST_TEXTS = 500;

function texts({ native }: IAudioMetadata): string[] {
  return Object.values(native)
    .flat()
    .flatMap(({ id, value }) => {
      const inner = typeof value === 'object' && value !== null && 'text' in value ? value.text : value;
      return typeof inner === 'string' ? [`${id} ${inner.slice(0, 5_000)}`] : [];
    })
    .slice(0, MOST_TEXTS);
}

function soundOf(found: IAudioMetadata): Sound {
  const { duration } = found.format;
  const sane = duration !== undefined && Number.isFinite(duration) && duration > 0 && duration < 1e7;
  return {
    seconds: sane ? duration : null,
    album: (found.common.album ?? '').slice(0, 1_000),
    title: (found.common.title ?? '').slice(0, 1_000),
    texts: texts(found),
  };
}

/**
 * Reads the length and the tags of a sound file as its bytes come in. Takes all of them, so that a checksum behind them is
 * looked at too, whatever the parser stops at. Answers null where it is no sound file or damaged. Throws what `parts` throws.
 */
export async function readSound(
  parts: AsyncIterable<Buffer>,
  name: string,
  bytes: number,
): Promise<Sound | null> {
  const pass = new PassThrough();
  let settled: Promise<Sound | null> | null = null;
  let open = true;
  try {
    for await (const part of parts) {
      settled ??= parseStream(
        pass,
        { mimeType: kindOf(part, name), size: bytes },
        { duration: true, skipCovers: true, skipPostHeaders: true },
      )
        .then(soundOf, () => null)
        .finally(() => {
          open = false;
        });
      if (open && !pass.write(part)) await Promise.race([once(pass, 'drain').catch(() => null), settled]);
    }
  } finally {
    pass.end();
  }
  return settled;
}
