/**
 * The schedule: a list scheduler that works backwards from the end.
 *
 * Jobs bound by matter that cannot stand (a foam, a warm base) are one bundle. A bundle is placed as late as its successors, the hands
 * and the devices allow; where something in it would stand too long, it is tried earlier, five minutes at a time. Every job ends before
 * what takes its matter starts, and no device that holds one thing is booked twice, by construction.
 */
import { Calendar } from './calendar.ts';
import { type Job, shared } from './tasks.ts';

export interface Kitchen {
  readonly cooks: number;
  /** How many there are of each device; one where it is not in the map. */
  readonly devices: ReadonlyMap<string, number>;
  /** Minutes before ready, as `[from, to)`, in which nobody works and no oven is on; none where the time of day is not known. */
  readonly nights: readonly (readonly [number, number])[];
}

export interface Placed {
  readonly start: number;
  readonly end: number;
}

/** Where each job lies, by its index; 0 is the time everything must be ready. */
export function schedule(jobs: readonly Job[], kitchen: Kitchen): readonly Placed[] {
  return new Scheduler(jobs, kitchen).run();
}

/** Minutes by which a bundle is tried earlier, and how far. */
const step = 5;
const furthest = 40 * 60;

class Scheduler {
  private readonly placed: (Placed | null)[];
  private readonly takers: readonly (readonly number[])[];
  /** The jobs of each job's bundle. */
  private readonly bundles: readonly (readonly number[])[];
  private readonly hands: Calendar;
  private readonly devices = new Map<string, Calendar>();

  constructor(
    private readonly jobs: readonly Job[],
    private readonly kitchen: Kitchen,
  ) {
    this.placed = jobs.map(() => null);
    const takers: number[][] = jobs.map(() => []);
    for (const { index, needs } of jobs) for (const need of needs) takers[need.of]?.push(index);
    this.takers = takers;
    this.bundles = bundlesOf(jobs);
    this.hands = this.calendar(kitchen.cooks, true);
  }

  run(): readonly Placed[] {
    for (let next = this.nextRoot(); next !== null; next = this.nextRoot()) this.placeBundle(next);
    for (const { index } of this.jobs) this.startAtOnce(index);
    return this.placed.map((placed) => placed ?? { start: 0, end: 0 });
  }

  /** Of the jobs whose takers all lie, the one that can end latest; of several the longest. */
  private nextRoot(): number | null {
    let best: number | null = null;
    for (const { index } of this.jobs) {
      if (!this.isFree(index)) continue;
      if (
        best === null ||
        this.limit(index) > this.limit(best) ||
        (this.limit(index) === this.limit(best) && this.longer(index, best))
      )
        best = index;
    }
    return best;
  }

  private longer(a: number, b: number): boolean {
    return (this.jobs[a]?.minutes ?? 0) > (this.jobs[b]?.minutes ?? 0);
  }

  private placeBundle(root: number): void {
    const latest = this.limit(root);
    let best: { readonly end: number; readonly excess: number } | null = null;
    for (let early = 0; early <= furthest; early += step) {
      const end = latest - early;
      const before = this.mark();
      const done = this.placeFrom(root, end);
      const excess = this.excessOf(done);
      if (excess === 0) return;
      if (best === null || excess < best.excess) best = { end, excess };
      this.undo(done, before);
    }
    if (best) this.placeFrom(root, best.end);
  }

  /** The root, then every job of its bundle that comes free, the least patient first. */
  private placeFrom(root: number, end: number): readonly number[] {
    const done = [root];
    this.place(root, end);
    for (;;) {
      let next: number | null = null;
      for (const index of this.bundles[root] ?? []) {
        if (!this.isFree(index)) continue;
        if (next === null || this.isSooner(index, next)) next = index;
      }
      if (next === null) return done;
      this.place(next, this.limit(next));
      done.push(next);
    }
  }

  private isSooner(a: number, b: number): boolean {
    const [patienceA, patienceB] = [this.patience(a), this.patience(b)];
    if (patienceA !== patienceB) return patienceA < patienceB;
    const [limitA, limitB] = [this.limit(a), this.limit(b)];
    return limitA !== limitB ? limitA > limitB : this.longer(a, b);
  }

  /** Minutes of slack left at what takes its matter: how long it may stand at the most impatient of them. */
  private patience(index: number): number {
    return Math.min(...(this.takers[index] ?? []).map((taker) => this.stands(index, taker)), Number.POSITIVE_INFINITY);
  }

  private stands(maker: number, taker: number): number {
    return this.jobs[taker]?.needs.find(({ of }) => of === maker)?.stands ?? Number.POSITIVE_INFINITY;
  }

  private isFree(index: number): boolean {
    return this.placed[index] === null && (this.takers[index] ?? []).every((taker) => this.placed[taker] != null);
  }

  /** The latest end: when the first of its takers starts. */
  private limit(index: number): number {
    return Math.min(0, ...(this.takers[index] ?? []).map((taker) => this.placed[taker]?.start ?? 0));
  }

  private place(index: number, latest: number): void {
    const job = this.jobs[index];
    if (!job) return;
    const calendars = this.calendarsFor(job);
    let end = latest;
    for (let settled = false; !settled; ) {
      const at = end;
      for (const calendar of calendars) end = calendar.latestEnd(end, job.minutes);
      settled = end === at;
    }
    for (const calendar of calendars) calendar.book(end - job.minutes, end);
    this.placed[index] = { start: end - job.minutes, end };
  }

  /** What comes out of the cold as good an hour later goes in as soon as it is there, rather than stand in front of it. */
  private startAtOnce(index: number): void {
    const job = this.jobs[index];
    const placed = this.placed[index];
    if (!job || !placed || !job.waiting || job.uses.some((device) => !shared.has(device))) return;
    const keeps = (this.takers[index] ?? []).every((taker) => this.stands(index, taker) === Number.POSITIVE_INFINITY);
    if (!keeps || !job.needs.some(({ stands }) => Number.isFinite(stands))) return;
    const start = Math.max(...job.needs.map(({ of }) => this.placed[of]?.end ?? placed.start));
    if (start < placed.start) this.placed[index] = { start, end: start + job.minutes };
  }

  private calendarsFor(job: Job): readonly Calendar[] {
    const devices = job.uses.filter((device) => !shared.has(device)).map((device) => this.deviceCalendar(device));
    return job.waiting ? devices : [this.hands, ...devices];
  }

  private deviceCalendar(device: string): Calendar {
    let calendar = this.devices.get(device);
    if (!calendar) {
      calendar = this.calendar(this.kitchen.devices.get(device) ?? 1, device === 'oven');
      this.devices.set(device, calendar);
    }
    return calendar;
  }

  private calendar(capacity: number, closedAtNight: boolean): Calendar {
    const calendar = new Calendar(capacity);
    if (closedAtNight)
      for (const [from, to] of this.kitchen.nights) for (let one = 0; one < capacity; one++) calendar.book(from, to);
    return calendar;
  }

  /** Minutes that matter made or taken by these jobs stands beyond what it may. */
  private excessOf(done: readonly number[]): number {
    let excess = 0;
    for (const index of done)
      for (const taker of this.takers[index] ?? []) {
        const stands = (this.placed[taker]?.start ?? 0) - (this.placed[index]?.end ?? 0);
        excess += Math.max(0, stands - this.stands(index, taker));
      }
    return excess;
  }

  private mark(): ReadonlyMap<Calendar, number> {
    return new Map([this.hands, ...this.devices.values()].map((calendar) => [calendar, calendar.count] as const));
  }

  private undo(done: readonly number[], before: ReadonlyMap<Calendar, number>): void {
    for (const index of done) this.placed[index] = null;
    for (const calendar of [this.hands, ...this.devices.values()]) {
      const nights = calendar === this.hands || calendar === this.devices.get('oven') ? this.kitchen.nights.length : 0;
      calendar.backTo(before.get(calendar) ?? nights * calendar.capacity);
    }
  }
}

/** For every job those it is bound to by matter that cannot stand, itself among them. */
function bundlesOf(jobs: readonly Job[]): readonly (readonly number[])[] {
  const parent = jobs.map(({ index }) => index);
  const top = (index: number): number => {
    let at = index;
    while (parent[at] !== at) at = parent[at] as number;
    return at;
  };
  for (const { index, needs } of jobs)
    for (const { of, stands } of needs) if (Number.isFinite(stands)) parent[top(of)] = top(index);
  const members = new Map<number, number[]>();
  for (const { index } of jobs) {
    const known = members.get(top(index));
    if (known) known.push(index);
    else members.set(top(index), [index]);
  }
  return jobs.map(({ index }) => members.get(top(index)) ?? [index]);
}
