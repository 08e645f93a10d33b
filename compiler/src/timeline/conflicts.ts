/** What the plan cannot avoid: matter that stands too long, and what is ready too early to keep. */
import { formatDuration } from '../quantities/format.ts';
import { inForce } from '../resolve/choices.ts';
import type { Conflict } from './model.ts';
import type { Placed } from './schedule.ts';
import { type Job, shared } from './tasks.ts';

export function conflictsOf(
  jobs: readonly Job[],
  plan: readonly Placed[],
  ids: readonly string[],
  cooks: number,
): readonly Conflict[] {
  const idOf = (index: number): string => ids[index] ?? '';
  const waits = jobs.flatMap((taker) =>
    taker.needs.flatMap(({ of, stands }): Conflict[] => {
      const maker = jobs[of];
      const from = plan[of]?.end ?? 0;
      const to = plan[taker.index]?.start ?? 0;
      if (!maker || to - from <= stands) return [];
      const why = reasonOf(taker, maker, jobs, plan, from, to, cooks);
      return [
        {
          kind: 'waits',
          message: `“${maker.text}” (${maker.component}) is done ${minutes(to - from)} before “${taker.text}”, and should not stand longer than ${minutes(stands)}${why}.`,
          tasks: [idOf(of), idOf(taker.index)],
        },
      ];
    }),
  );
  return [...waits, ...keepingOf(jobs, plan, idOf)];
}

/** What the hands or the device were at instead; nothing where it is only the other things it needs. */
function reasonOf(
  taker: Job,
  maker: Job,
  jobs: readonly Job[],
  plan: readonly Placed[],
  from: number,
  to: number,
  cooks: number,
): string {
  const during = jobs.filter(
    (job) => job !== taker && job !== maker && (plan[job.index]?.start ?? 0) < to && (plan[job.index]?.end ?? 0) > from,
  );
  const device = maker.uses.find((one) => !shared.has(one) && during.some(({ uses }) => uses.includes(one)));
  if (device) return `: the ${device} is taken`;
  const busy = during.find(({ waiting }) => !waiting);
  if (!busy || maker.waiting) return '';
  return `: ${cooks === 1 ? 'the only cook is' : `all ${cooks} cooks are`} at “${busy.text}” and what goes with it`;
}

function keepingOf(jobs: readonly Job[], plan: readonly Placed[], idOf: (index: number) => string): readonly Conflict[] {
  const last = new Map<Job['order'], Job>();
  for (const job of jobs) {
    const known = last.get(job.order);
    if (!known || (plan[job.index]?.end ?? 0) > (plan[known.index]?.end ?? 0)) last.set(job.order, job);
  }
  return [...last].flatMap(([{ formula, selection }, job]): Conflict[] => {
    const keeps = inForce(formula.keeps, selection);
    const early = -(plan[job.index]?.end ?? 0);
    if (!keeps || early <= keeps.seconds.high / 60) return [];
    return [
      {
        kind: 'keeps',
        message: `${formula.name} is finished ${minutes(early)} before it must be ready, and keeps ${formatDuration(keeps.seconds)}.`,
        tasks: [idOf(job.index)],
      },
    ];
  });
}

const minutes = (count: number): string => formatDuration(count * 60);
