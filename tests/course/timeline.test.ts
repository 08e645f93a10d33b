/** Timelines: nothing before its matter, nothing twice on one oven, no more hands than cooks, nights kept; what cannot be kept is named. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Order } from '../../compiler/src/card/order.ts';
import {
  type Task,
  type Timeline,
  type TimelineOptions,
  timeline,
  timelineHtml,
  timelineJson,
  timelineMdast,
  timelineText,
} from '../../compiler/src/timeline/index.ts';
import { order, samples } from './support.ts';

const clock = (text: string): number => {
  const [hours = 0, minutes = 0] = text.split(':').map(Number);
  return hours * 60 + minutes;
};

const plan = (source: Parameters<typeof order>[0], options: TimelineOptions = {}) => timeline([order(source)], options);

/** How many of the tasks run at once, at most. */
function most(tasks: readonly Task[]): number {
  return Math.max(
    0,
    ...tasks.map(({ startMinutes: at }) => tasks.filter((task) => task.startMinutes <= at && task.endMinutes > at).length),
  );
}

/** Everything that must hold of any plan, in words where it does not. */
function broken(found: Timeline, orders: readonly Order[]): string[] {
  const faults: string[] = [];
  const byId = new Map(found.tasks.map((task) => [task.id, task]));
  for (const task of found.tasks) {
    if (!Number.isInteger(task.startMinutes) || !Number.isInteger(task.endMinutes)) faults.push(`${task.text}: no whole minutes`);
    if (task.endMinutes <= task.startMinutes) faults.push(`${task.text}: takes no time`);
    if (task.endMinutes > 0) faults.push(`${task.text}: is not ready`);
    for (const id of task.needs) {
      const needed = byId.get(id);
      if (!needed) faults.push(`${task.text}: needs ${id}, which is not there`);
      else if (needed.endMinutes > task.startMinutes) faults.push(`${task.text} runs before ${needed.text} is done`);
    }
  }
  if (most(found.tasks.filter(({ waiting }) => !waiting)) > found.cooks) faults.push('more hands than cooks');
  for (const device of ['oven', 'mixer'])
    if (most(found.tasks.filter(({ uses }) => uses.includes(device))) > 1) faults.push(`two on one ${device}`);
  if (found.ready !== null) {
    for (const task of found.tasks.filter(({ waiting }) => !waiting)) {
      const start = (((clock(found.ready) + task.startMinutes) % 1440) + 1440) % 1440;
      if (start >= 22 * 60 || start < 6 * 60) faults.push(`${task.text}: someone works at night`);
    }
  }
  const records = orders.reduce((sum, { context }) => sum + context.run.records.length, 0);
  if (found.tasks.length !== records) faults.push(`${found.tasks.length} tasks of ${records} steps`);
  return faults;
}

describe('a plan', () => {
  it.each(samples)('of %s holds, and has no conflict for one cook', (name) => {
    const wanted = order(name);
    for (const options of [{}, { ready: '19:00' }, { ready: '08:00', cooks: 2 }]) {
      const found = timeline([wanted], options);
      expect(broken(found, [wanted])).toEqual([]);
      expect(found.conflicts).toEqual([]);
    }
  });

  it('of any formulas together, for any cooks, at any time, holds', () => {
    const orders = samples.map((name) => order(name));
    fc.assert(
      fc.property(
        fc.array(fc.nat({ max: orders.length - 1 }), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 1, max: 3 }),
        fc.option(fc.integer({ min: 6 * 60, max: 22 * 60 }), { nil: undefined }),
        (picks, cooks, minutes) => {
          const chosen = picks.map((index) => orders[index]!);
          const ready =
            minutes === undefined ? {} : { ready: `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}` };
          expect(broken(timeline(chosen, { cooks, ...ready }), chosen)).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('never runs a step before what the run says it takes in', () => {
    for (const name of samples) {
      const wanted = order(name);
      const { run } = wanted.context;
      const found = timeline([wanted], { ready: '18:00' });
      const taskOf = (record: (typeof run.records)[number]): Task | undefined => {
        const line = wanted.positions.lineOf(record.step.place);
        const file = wanted.positions.fileOf(record.step.place);
        const same = found.tasks.filter((task) => task.line === line && task.file === file);
        return same.length === 1 ? same[0] : undefined;
      };
      let compared = 0;
      for (const [maker, takers] of run.later)
        for (const taker of takers) {
          const [first, second] = [taskOf(maker), taskOf(taker)];
          if (!first || !second) continue;
          compared++;
          expect(first.endMinutes, `${name}: ${first.text} before ${second.text}`).toBeLessThanOrEqual(second.startMinutes);
        }
      expect(compared, name).toBeGreaterThan(0);
    }
  });
});

describe('durations', () => {
  it('are as written, else estimates that say so', () => {
    const { tasks } = plan('samples/course/lesson-1-custard.nappe');
    const find = (text: string) => tasks.find((task) => task.text.startsWith(text));
    const length = ({ startMinutes, endMinutes }: Task) => endMinutes - startMinutes;
    expect(length(find('Infuse vanilla pod')!)).toBe(20);
    expect(length(find('Bloom gelatin')!)).toBe(10);
    expect(length(tasks.at(-1)!)).toBe(240);
    expect(find('Infuse vanilla pod')?.estimated).toBe(false);
    expect(find('Whip cream')?.estimated).toBe(true);
    expect(timelineText(plan('samples/course/lesson-1-custard.nappe'))).toMatch(/≈ \d+ min {2}Whip cream/u);
  });
});

describe('what cannot stand', () => {
  it('is made just before it is taken: the foam before the fold, the warm base with it', () => {
    const { tasks } = plan('samples/blackcurrant-mousse.nappe', { ready: '19:00' });
    const fold = tasks.filter(({ text }) => text.startsWith('Fold')).at(-1)!;
    for (const id of fold.needs) {
      const needed = tasks.find((task) => task.id === id)!;
      expect(fold.startMinutes - needed.endMinutes, needed.text).toBeLessThanOrEqual(45);
    }
  });

  // Whites of a French meringue hold five minutes (common practice, no source): two bowls of them and one pair of hands cannot be.
  const twoFoams = (equipment: string) => ({
    text: `${equipment}
formula Two whites
  100 g  egg white, as first whites
  100 g  egg white, as second whites
  whip first whites for 20 min to soft peak
  whip second whites for 20 min to soft peak
  combine first whites, second whites
`,
  });

  it('is named where the hands are missing', () => {
    const { conflicts, tasks } = plan(twoFoams(''));
    expect(conflicts).toHaveLength(1);
    expect(conflicts[0]).toMatchObject({ kind: 'waits' });
    expect(conflicts[0]?.message).toMatch(/done 20 min before .* should not stand longer than 5 min/u);
    expect(conflicts[0]?.tasks.every((id) => tasks.some((task) => task.id === id))).toBe(true);
    expect(timelineText(plan(twoFoams('')))).toContain('Conflicts');
    expect(timelineHtml(plan(twoFoams('')))).toContain('Conflicts');
  });

  it('is named where the mixer is, though there are cooks', () => {
    const [conflict] = plan(twoFoams(''), { cooks: 2 }).conflicts;
    expect(conflict?.message).toContain('the mixer is taken');
  });

  it('is no conflict with two cooks and two mixers', () => {
    const two = twoFoams('equipment\n  mixer bowl 4 l\n  second mixer bowl 4 l\n');
    expect(plan(two, { cooks: 2 }).conflicts).toEqual([]);
  });
});

describe('one oven', () => {
  const bake = (name: string) => ({
    text: `formula ${name}
  200 g  plain flour
  100 g  butter, 18 °C
  60 g   caster sugar
  rub plain flour, butter, caster sugar until sandy
  chill for 1 h
  bake at 170 °C for 40 min until golden
`,
  });

  it('takes one thing after the other', () => {
    const orders = [bake('First'), bake('Second'), bake('Third')].map((source) => order(source));
    const found = timeline(orders, { ready: '18:00' });
    expect(broken(found, orders)).toEqual([]);
    const baked = found.tasks.filter(({ uses }) => uses.includes('oven'));
    expect(baked.map(({ startMinutes, endMinutes }) => endMinutes - startMinutes)).toEqual([40, 40, 40]);
    expect(most(baked)).toBe(1);
  });

  it('takes two where `equipment` lists two', () => {
    const two = (name: string) => ({ text: `equipment\n  deck oven 60 l\n  small oven 30 l\n\n${bake(name).text}` });
    const found = timeline(
      ['First', 'Second'].map((name) => order(two(name))),
      { ready: '18:00', cooks: 2 },
    );
    expect(most(found.tasks.filter(({ uses }) => uses.includes('oven')))).toBe(2);
  });
});

describe('days', () => {
  it('puts a long freeze and what comes before it on the day before', () => {
    const found = plan('samples/harbour-entremets.nappe', { ready: '19:00' });
    const freeze = found.tasks.filter(({ text }) => text.startsWith('Freeze')).at(-1)!;
    expect(clock('19:00') + freeze.startMinutes).toBeLessThan(0);
    expect(timelineText(found)).toMatch(/The day before[\s\S]*On the day/u);
  });

  it('says what may be done the day before: what leaves something that keeps', () => {
    const { tasks } = plan('samples/course/lesson-1-custard.nappe');
    expect(new Set(tasks.filter(({ dayBefore }) => dayBefore).map(({ component }) => component))).toEqual(
      new Set(['crème anglaise']),
    );
    const cooked = tasks.find(({ text }) => text.startsWith('Cook'));
    const fold = tasks.find(({ text }) => text.startsWith('Fold'));
    expect([cooked?.dayBefore, fold?.dayBefore]).toEqual([true, false]);
  });

  it('says where something must be ready before it keeps that long', () => {
    const text =
      'formula Early\n  makes 1 kg\n  keeps 1 h\n  1 kg  raspberry purée, pasteurised, 20 °C\n  stir raspberry purée for 1 h\n';
    expect(plan({ text }, { ready: '06:30' }).conflicts).toMatchObject([{ kind: 'keeps' }]);
    expect(plan({ text }, { ready: '12:00' }).conflicts).toEqual([]);
  });

  it('lets those work at night who must be ready at night', () => {
    const text = 'formula Bread\n  1 kg  plain flour\n  600 g  water\n  knead plain flour, water for 20 min\n';
    expect(plan({ text }, { ready: '04:00' }).tasks[0]).toMatchObject({ startMinutes: -20, endMinutes: 0 });
  });
});

describe('order of steps that no matter binds', () => {
  it('is as written: `do`, `check`, and vessels made ready', () => {
    const text = `formula Bound
  makes 1 ring of 16 x 3 cm
  20 g   butter
  500 g  raspberry purée, pasteurised, 20 °C
  5 g    agar
  grease ring with butter
  stir agar into raspberry purée
  boil raspberry purée for 2 min
  do "Call the class together."
  check 60-70 °C
  pour into ring
`;
    const found = plan({ text });
    expect(broken(found, [order({ text })])).toEqual([]);
    const at = (word: string) => found.tasks.find((task) => task.text.includes(word))!;
    expect(at('Grease').endMinutes).toBeLessThanOrEqual(at('Pour').startMinutes);
    expect(at('Boil').endMinutes).toBeLessThanOrEqual(at('Call').startMinutes);
    expect(at('Call').endMinutes).toBeLessThanOrEqual(at('Pour').startMinutes);
  });
});

describe('outputs', () => {
  const orders = [order('samples/course/lesson-1-custard.nappe'), order('samples/course/lesson-2-ganache.nappe')];
  const found = timeline(orders, { ready: '19:30' });

  it('are data of the published shape', () => {
    const data = timelineJson(found) as { version: number; ready: string; tasks: Task[]; conflicts: unknown[] };
    expect(data).toMatchObject({ version: 1, ready: '19:30', conflicts: [] });
    expect(data.tasks[0]).toMatchObject({
      id: 't1',
      formula: 'Orange blossom bavarois',
      line: expect.any(Number),
      text: expect.any(String),
      startMinutes: expect.any(Number),
      endMinutes: expect.any(Number),
      waiting: false,
      uses: [],
      needs: [],
    });
    expect(data.tasks.at(-1)?.endMinutes).toBe(0);
    expect((timelineJson(timeline(orders)) as { ready: null }).ready).toBeNull();
  });

  it('say every step once in text, HTML and Markdown', () => {
    const html = timelineHtml(found);
    for (const { text } of found.tasks) {
      expect(timelineText(found)).toContain(text);
      expect(html.replaceAll('\u00a0', ' ').replaceAll('&#x26;', '&')).toContain(text);
      expect(JSON.stringify(timelineMdast(found))).toContain(JSON.stringify(text).slice(1, -1));
    }
  });

  it('draw every step in a chart that is read aloud too', () => {
    const html = timelineHtml(found);
    const [, ...drawings] = html.split('<svg');
    expect(drawings.length).toBeGreaterThan(0);
    for (const { number } of found.tasks) expect(drawings.some((drawing) => drawing.includes(`<title>${number}, `))).toBe(true);
    for (const drawing of drawings) expect(drawing).toMatch(/role="img" aria-labelledby="([\w-]+)-title \1-desc"/u);
  });

  it('are right on the edges: no steps, a step of weeks, an unknown formula', () => {
    expect(timeline([order({ text: 'formula Nothing\n  1 kg  water\n' })]).tasks).toEqual([]);
    const long = plan(
      { text: 'formula Long\n  1 kg  raspberry purée, pasteurised\n  rest at 4 °C for 30 d\n' },
      { ready: '12:00' },
    );
    expect(long.tasks[0]?.endMinutes).toBe(0);
    expect(timelineHtml(long)).toContain('days before');
  });
});
