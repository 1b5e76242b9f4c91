import { PART_BYTES } from '../contract/files.ts';
import type { Errands } from './context.ts';

export const fileErrands = {
  'files.put': ({ files }, { file, name, part }) => {
    const id = file ?? files.begin(name);
    return { file: id, bytes: files.append(id, Buffer.from(part, 'base64')) };
  },

  'files.get': ({ files }, { file, from }) => {
    const bytes = files.size(file);
    const part = files.part(file, from, PART_BYTES);
    const end = from + part.byteLength;
    return { part: Buffer.from(part).toString('base64'), next: end < bytes ? end : null, bytes };
  },

  'files.drop': ({ files }, { file }) => ({ dropped: files.drop(file) }),
} satisfies Errands<'files.put' | 'files.get' | 'files.drop'>;
