import type { Readings } from './context.ts';
import { readInThread } from './thread.ts';

export const proofCheckReadings = {
  'proofChecks.read': async (context, { file, kind }) => {
    const { files } = context;
    const name = files.nameOf(file);
    // A reader hands over what it read through a file, so that a large one never crosses as a message.
    const reading = files.begin(`${name}.json`);
    try {
      const task = { path: files.pathOf(file), name, kind, to: files.pathOf(reading) };
      return { reading, ...(await readInThread(context, task)) };
    } catch (error) {
      files.drop(reading);
      throw error;
    }
  },
} satisfies Readings<'proofChecks.read'>;
