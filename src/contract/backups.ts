import { z } from 'zod';
import { operation } from './operation.ts';

/** Why a backup was taken. */
export const BACKUP_KINDS = ['daily', 'by hand', 'before upgrade', 'before restore'] as const;

export const backup = z.object({
  /** File name within the backup folder; this is how it is named in other operations. */
  name: z.string(),
  path: z.string(),
  kind: z.enum(BACKUP_KINDS),
  /** Moment it was taken, ISO UTC. */
  at: z.string(),
  bytes: z.int(),
});
export type Backup = z.infer<typeof backup>;

const named = z.object({ name: z.string().min(1).max(300) });

export const listBackups = operation({
  name: 'backups.list',
  kind: 'errand',
  summary: 'The backups of this catalogue, newest first, and the folder they are kept in.',
  input: z.object({}),
  output: z.object({ folder: z.string(), backups: z.array(backup) }),
  errors: ['DISK_TROUBLE'],
});

export const makeBackup = operation({
  name: 'backups.make',
  kind: 'errand',
  summary: 'Take a backup now; it gets its name only after it was read back and proven sound.',
  input: z.object({}),
  output: backup,
  errors: ['DISK_TROUBLE', 'CATALOGUE_DAMAGED'],
});

export const previewBackup = operation({
  name: 'backups.preview',
  kind: 'errand',
  summary: 'What restoring a backup would change: the changes made since, which would be lost, newest first.',
  input: named,
  output: z.object({
    backup,
    sound: z.boolean(),
    /** Whether the backup is an earlier state of this very catalogue (its journal is a beginning of ours). */
    sameStory: z.boolean(),
    lost: z.array(z.object({ at: z.string(), operation: z.string(), entries: z.int() })),
    lostTotal: z.int(),
    now: z.object({ works: z.int(), formats: z.int(), numbers: z.int() }),
    restored: z.object({ works: z.int(), formats: z.int(), numbers: z.int() }),
  }),
  errors: ['NOT_FOUND', 'DISK_TROUBLE', 'CATALOGUE_DAMAGED'],
});

export const restoreBackup = operation({
  name: 'backups.restore',
  kind: 'errand',
  summary: 'Put a backup in the place of the catalogue; the catalogue as it stands is backed up first.',
  input: named,
  output: z.object({ restored: backup, before: backup }),
  errors: [
    'NOT_FOUND',
    'READ_ONLY',
    'DISK_TROUBLE',
    'CATALOGUE_DAMAGED',
    'CATALOGUE_NEWER',
    'CATALOGUE_FOREIGN',
  ],
});
