import { useQueryOf } from '../../api.ts';
import { useAsOf } from '../../location.ts';
import { useReadOnly } from '../../read-only.ts';
import { PageHeader, Refused } from '../../ui/index.ts';
import { AboutPart } from './about-part.tsx';
import { BackupsPart } from './backups/backups-part.tsx';
import { LookPart } from './look-part.tsx';
import { NoticesPart } from './notices-part.tsx';
import { ProgramPart } from './program-part.tsx';
import { RangesPart } from './ranges-part.tsx';
import './settings.css';
import { PlansPart } from './plans/plans-part.tsx';
import { SettingsForm } from './settings-form.tsx';
import { TextsPart } from './texts/texts-part.tsx';

/** The Settings screen: what is usual in this catalogue, how it looks, and what it is. */
export default function SettingsScreen() {
  const { asOf } = useAsOf();
  const readOnly = useReadOnly();
  const settings = useQueryOf('settings.get', {});
  const info = useQueryOf('catalogue.info', {});
  return (
    <>
      <PageHeader
        title="Settings"
        lede={asOf === undefined ? 'They are kept in the catalogue file.' : 'As they stand today.'}
      />
      <Refused refusal={settings.error ?? info.error} />
      {settings.data ? <LookPart theme={settings.data.theme} readOnly={readOnly} /> : null}
      <NoticesPart />
      {settings.data && info.data ? (
        <SettingsForm key={info.data.file} file={info.data.file} saved={settings.data} readOnly={readOnly} />
      ) : null}
      {info.data ? <PlansPart readOnly={readOnly} /> : null}
      {info.data ? <TextsPart readOnly={readOnly} /> : null}
      {info.data ? <BackupsPart readOnly={readOnly} /> : null}
      {info.data ? <RangesPart readOnly={readOnly} /> : null}
      {info.data ? <AboutPart info={info.data} /> : null}
      <ProgramPart />
    </>
  );
}
