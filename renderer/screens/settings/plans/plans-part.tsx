import { useState } from 'react';
import { PLAN_KINDS, type PlanKind } from '../../../../src/contract/plan-templates.ts';
import type { PlanVersion } from '../../../../src/contract/templates.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, Dialog, Refused, Section } from '../../../ui/index.ts';
import { versionName } from '../texts/text-versions.tsx';
import './plans.css';
import { StepsDialog } from './steps-dialog.tsx';
import { PLAN_NAMES, whenInWords } from './words.ts';

function savedInWords(version: PlanVersion): string {
  return version.savedOn === null
    ? versionName(version)
    : `${versionName(version)}, ${formatDay(version.savedOn)}`;
}

function usedInWords(plans: number): string {
  if (plans === 0) return '';
  return plans === 1 ? ', one plan made from it' : `, ${plans.toLocaleString()} plans made from it`;
}

interface VersionsProps {
  kind: PlanKind;
  versions: readonly PlanVersion[];
  readOnly: string | undefined;
  onClose: () => void;
}

function Versions({ kind, versions, readOnly, onClose }: VersionsProps) {
  const putBack = useCommand('templates.putBackPlan');
  return (
    <Dialog
      open
      onClose={onClose}
      title={`Versions of the steps: ${PLAN_NAMES[kind]}`}
      footer={<Button onClick={onClose}>Done</Button>}
    >
      <div className="stack">
        <p className="soft">Putting an older one back makes it the newest; nothing is lost.</p>
        <Refused refusal={putBack.refusal} />
        <ul className="text-versions">
          {versions.map((version, at) => (
            <li key={version.version} className="text-version">
              <details>
                <summary>
                  <strong>{savedInWords(version)}</strong>
                  {at === 0 ? ', in use' : ''}
                  {usedInWords(version.plans)}
                  {version.note === '' ? '' : `: ${version.note}`}
                </summary>
                <ul>
                  {version.steps.map((step) => (
                    <li key={step.key}>
                      {step.title}{' '}
                      <span className="soft">({step.on ? whenInWords(step) : 'switched off'})</span>
                    </li>
                  ))}
                </ul>
              </details>
              {at === 0 ? null : (
                <Button
                  kind="quiet"
                  label={`Put back: ${versionName(version)}`}
                  pending={putBack.pending}
                  disabled={readOnly !== undefined}
                  reason={readOnly}
                  onClick={() =>
                    void putBack.run(
                      { kind, version: version.version },
                      `${versionName(version)} is in use again.`,
                    )
                  }
                >
                  Put back
                </Button>
              )}
            </li>
          ))}
        </ul>
      </div>
    </Dialog>
  );
}

function PlanLine({ kind, readOnly }: { kind: PlanKind; readOnly: string | undefined }) {
  const list = useQueryOf('templates.planVersions', { kind });
  const [doing, setDoing] = useState<'edit' | 'versions'>();
  const versions = list.data?.versions ?? [];
  const [inUse] = versions;
  const close = () => setDoing(undefined);
  const off = inUse?.steps.filter(({ on }) => !on).length ?? 0;
  const own = inUse?.steps.filter((step) => step.kind === 'own').length ?? 0;
  return (
    <li className="plan-line">
      <span>
        <strong>{PLAN_NAMES[kind]}</strong>{' '}
        {inUse ? (
          <span className="soft">
            {savedInWords(inUse)}; {inUse.steps.length.toLocaleString()} steps, {own.toLocaleString()} of your
            own, {off.toLocaleString()} switched off
          </span>
        ) : null}
      </span>
      <Refused refusal={list.error} />
      <span className="row">
        <Button
          label={`Edit the steps: ${PLAN_NAMES[kind]}`}
          disabled={readOnly !== undefined}
          reason={readOnly}
          onClick={() => setDoing('edit')}
        >
          Edit
        </Button>
        <Button
          kind="quiet"
          label={`Versions of the steps: ${PLAN_NAMES[kind]}`}
          onClick={() => setDoing('versions')}
        >
          Versions
        </Button>
      </span>
      {doing === 'edit' && inUse ? <StepsDialog version={inUse} onClose={close} /> : null}
      {doing === 'versions' ? (
        <Versions kind={kind} versions={versions} readOnly={readOnly} onClose={close} />
      ) : null}
    </li>
  );
}

/** The steps that plans are made from. */
export function PlansPart({ readOnly }: { readOnly: string | undefined }) {
  return (
    <Section title="Steps of plans">
      <div className="stack">
        <p>
          What the plan of a release and of a retirement asks for, and when. Steps can be switched off, moved
          and added.
        </p>
        <ul className="plan-lines">
          {PLAN_KINDS.map((kind) => (
            <PlanLine key={kind} kind={kind} readOnly={readOnly} />
          ))}
        </ul>
      </div>
    </Section>
  );
}
