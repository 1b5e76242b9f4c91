import type { PlanKind, PlanStep } from '../contract/plan-templates.ts';
import { Refusal } from '../contract/refusal.ts';
import { TEXTS, type TextKind } from '../contract/text-kinds.ts';
import { planVersions } from '../records/plans.ts';
import { checkSteps } from '../rules/plans/check-template.ts';
import { textRefusal } from '../rules/text-templates.ts';
import { insertSteps } from '../store/plan-templates.ts';
import { currentText, insertText, textVersions } from '../store/templates.ts';
import type { CommandContext, Commands } from './context.ts';

/** Throws BAD_INPUT for a text with anything that nothing fills. */
export function refuseUnfillable(kind: TextKind, text: string | undefined, field: string): void {
  const fault = text ? textRefusal(kind, text) : undefined;
  if (fault !== undefined) throw new Refusal('BAD_INPUT', fault, field);
}

interface NewText {
  kind: TextKind;
  subject: string;
  body: string;
  note: string;
}

function saveText({ db, today }: CommandContext, text: NewText): { version: number } {
  const now = currentText(db, text.kind);
  if (now.subject === text.subject && now.body === text.body) return { version: now.version };
  return { version: insertText(db, { ...text, version: now.version, savedOn: today }) };
}

/** 'Version 3', or for version 0 'The program's own text'. */
const nameOf = (version: number, what: string) =>
  version === 0 ? `The program's own ${what}` : `Version ${version}`;

interface NewSteps {
  kind: PlanKind;
  steps: readonly PlanStep[];
  note: string;
}

function savePlan({ db, today }: CommandContext, wanted: NewSteps): { version: number } {
  const [now] = planVersions(db, wanted.kind);
  if (now && JSON.stringify(now.steps) === JSON.stringify(wanted.steps)) return { version: now.version };
  return { version: insertSteps(db, { ...wanted, savedOn: today }).version };
}

export const templateCommands = {
  'templates.saveText': (context, input) => {
    const { kind, subject, body } = input;
    refuseUnfillable(kind, subject, 'subject');
    refuseUnfillable(kind, body, 'body');
    if ((TEXTS[kind].subject === '') !== (subject === ''))
      throw new Refusal(
        'BAD_INPUT',
        subject === ''
          ? 'Write the subject that the mail goes out with.'
          : 'This text is not sent to anybody, so it takes no subject; leave it empty.',
        'subject',
      );
    return saveText(context, input);
  },

  'templates.putBackText': (context, { kind, version }) => {
    const versions = textVersions(context.db, kind);
    const old = versions.find((entry) => entry.version === version);
    if (!old) throw new Refusal('NOT_FOUND', `This text has no version ${version}.`, 'version');
    if (old === versions[0])
      throw new Refusal('STEP_REFUSED', 'That version is the one in use already.', 'version');
    return saveText(context, { ...old, note: `${nameOf(version, 'text')} put back` });
  },
  'templates.savePlan': (context, input) => {
    const fault = checkSteps(input.kind, input.steps)[0];
    if (fault) throw new Refusal('BAD_INPUT', fault.sentence, `steps.${fault.at}.${fault.field}`);
    return savePlan(context, input);
  },

  'templates.putBackPlan': (context, { kind, version }) => {
    const versions = planVersions(context.db, kind);
    const old = versions.find((entry) => entry.version === version);
    if (!old) throw new Refusal('NOT_FOUND', `These steps have no version ${version}.`, 'version');
    if (old === versions[0])
      throw new Refusal('STEP_REFUSED', 'That version is the one in use already.', 'version');
    return savePlan(context, { ...old, note: `${nameOf(version, 'steps')} put back` });
  },
} satisfies Commands<
  'templates.saveText' | 'templates.putBackText' | 'templates.savePlan' | 'templates.putBackPlan'
>;
