import { Refusal } from '../contract/refusal.ts';
import { calendarOf, openTasks, planListing, stepsInUse } from '../records/plans.ts';
import { toRelease } from '../records/release.ts';
import { slipOf } from '../records/slips.ts';
import { editionLabel } from '../rules/labels.ts';
import { learnedTimes } from '../rules/lead-times.ts';
import { channelDays } from '../rules/plans/proof-days.ts';
import { earliestRelease, unhurriedRelease, workingDaysBetween } from '../rules/plans/reach.ts';
import { datedOf, releaseInstances } from '../rules/plans/release.ts';
import { releaseDates } from '../rules/plans/release-days.ts';
import { later } from '../rules/plans/retirement-days.ts';
import { stepsByChannel } from '../store/listing-steps.ts';
import { editionOfPlan, listingsOfEdition, plansInForce } from '../store/plans.ts';
import type { Queries } from './context.ts';

export const planQueries = {
  'channels.leadTimes': ({ db }) => {
    const calendar = calendarOf(db);
    const steps = Map.groupBy(stepsByChannel(db), ({ channelId }) => channelId);
    const channels = db.all<{
      channelId: number;
      channelName: string;
      leadDays: number;
      removalDays: number;
    }>(
      'SELECT id AS channelId, name AS channelName, lead_days AS leadDays, removal_days AS removalDays FROM channel ORDER BY name',
    );
    return {
      channels: channels.map((channel) => {
        const times = learnedTimes(calendar, steps.get(channel.channelId) ?? []);
        const lead = times.toProof || times.toSale;
        return {
          ...channel,
          ...times,
          learnedLeadDays: lead
            ? Math.min(365, (times.toProof?.median ?? 0) + (times.toSale?.median ?? 0))
            : null,
          learnedRemovalDays: times.toGone ? Math.min(365, times.toGone.median) : null,
        };
      }),
    };
  },

  'plans.previewRelease': ({ db, today }, { editionId, printedProof, ...asked }) => {
    const edition = editionOfPlan(db, editionId);
    if (!edition) throw new Refusal('NOT_FOUND', `There is no edition ${editionId}.`, 'editionId');
    const label = editionLabel(edition);
    const listings = toRelease(listingsOfEdition(db, editionId)).map((row) => planListing(row, printedProof));
    if (listings.length === 0)
      throw new Refusal('NOT_READY', `Nothing of ${label} is listed that could be released.`, 'editionId');
    const calendar = calendarOf(db);
    const instances = releaseInstances({ listings, steps: stepsInUse(db, 'release'), edition: label });
    const items = datedOf(instances);
    const earliest = earliestRelease(calendar, today, items);
    const withoutHaste = unhurriedRelease(calendar, today, items);
    const day = later(asked.day ?? withoutHaste, today);
    const days = releaseDates({ calendar, today, day }, items);
    const tasks = instances
      .map(({ key, title }) => ({ key, title, dueOn: days.get(key) ?? day }))
      .toSorted((a, b) => a.dueOn.localeCompare(b.dueOn));
    const submit = instances.find(({ step }) => step.kind === 'submit');
    const byChannel = new Map(listings.map((one) => [one.channelName, channelDays(one)]));
    return {
      day,
      earliest,
      withoutHaste,
      shortBy: workingDaysBetween(calendar, day, earliest),
      submitOn: submit ? (days.get(submit.key) ?? null) : null,
      channels: [...byChannel]
        .map(([channelName, count]) => ({ channelName, days: count }))
        .toSorted((a, b) => b.days - a.days),
      tasks,
    };
  },

  'plans.previewSlip': (context, input) => {
    const { plan, moves, earliest, shortBy, canSqueeze } = slipOf(context, input);
    return { planId: plan.id, day: plan.day, moves, earliest, shortBy, canSqueeze };
  },

  'plans.late': ({ db, today }, { editionId }) => {
    const calendar = calendarOf(db);
    const plans = plansInForce(db, 'release').filter(
      (plan) => editionId === undefined || plan.editionId === editionId,
    );
    return {
      plans: plans.flatMap((plan) => {
        const tasks = openTasks(db, plan);
        const late = tasks.filter(({ dueOn }) => dueOn < today);
        const earliest = earliestRelease(calendar, today, tasks);
        const shortBy = workingDaysBetween(calendar, plan.day, earliest);
        if (late.length === 0 && shortBy === 0) return [];
        return [
          {
            ...{ planId: plan.id, editionId: plan.editionId, day: plan.day, earliest, shortBy },
            late: late.map(({ key, title, dueOn }) => ({ id: key, title, dueOn })),
          },
        ];
      }),
    };
  },
} satisfies Queries<'channels.leadTimes' | 'plans.previewRelease' | 'plans.previewSlip' | 'plans.late'>;
