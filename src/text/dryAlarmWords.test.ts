import { describe, expect, test } from 'vitest';
import { dryAlarmWords } from './dryAlarmWords.ts';
import { roomAlarmWords } from './roomAlarmWords.ts';

const alone = {
  code: 'reading-stands-alone',
  rug: 'r',
  hour: 22.5,
  kind: 'pocketRh',
  spreads: -4.2,
} as const;
const late = { code: 'wet-past-red', rug: 'r', chance: 0.97 } as const;

/** Hour 0 at seven in the evening, told as a clock would. */
const names = {
  rug: () => '38 Blue saddle-bag face',
  at: (instant: string) => instant.slice(11, 16),
  instant: (hour: number) => new Date(Date.UTC(2026, 2, 2, 19) + hour * 3_600_000).toISOString(),
};

describe('an alarm of the drying room', () => {
  test('names the reading that stands alone by its kind and by the clock on the wall', () => {
    expect(roomAlarmWords(alone, names)).toMatch(
      /^38 Blue saddle-bag face: the pocket humidity at 17:30 fits nothing else/,
    );
  });
  test('of a scenario goes by the scenario’s hours', () => {
    expect(dryAlarmWords(alone)).toContain('the pocket humidity at hour 22.5 fits nothing else');
  });
  test('of a rug that hangs wet already does not tell not to wet it', () => {
    const said = roomAlarmWords(late, names);
    expect(said).toContain('not dry within 48 h of its first wetting (97 % likely)');
    expect(said).not.toContain('Do not wet it');
    expect(dryAlarmWords(late)).toContain('Do not wet it before the room can dry it');
  });
});
