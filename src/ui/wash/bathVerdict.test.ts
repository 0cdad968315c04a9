import { describe, expect, test } from 'vitest';
import { shippedRulebook } from '../../core/wash/index.ts';
import {
  clothVerdict,
  phVerdict,
  rescuePhVerdict,
  runOffVerdict,
  temperatureVerdict,
} from './bathVerdict.ts';

// Stop conditions are workshop settings of this project; there is no published source to check against.
const limits = shippedRulebook.stops;

describe('a bath reading is judged at once', () => {
  const band = { least: 5, most: 7 };
  test('a pH inside the band is fine, both ends included', () => {
    expect(phVerdict(5, band, limits).tone).toBe('ok');
    expect(phVerdict(7, band, limits).tone).toBe('ok');
  });
  test('a pH a little outside the band asks to be brought back', () => {
    expect(phVerdict(7.3, band, limits).tone).toBe('caution');
    expect(phVerdict(4.6, band, limits).tone).toBe('caution');
  });
  test('a pH half a unit outside the band stops the wash', () => {
    expect(phVerdict(7.5, band, limits).tone).toBe('stop');
    expect(phVerdict(4.5, band, limits).tone).toBe('stop');
  });
  test('a bath five degrees too warm stops the wash', () => {
    expect(temperatureVerdict(26, { least: 18, most: 24 }, limits).tone).toBe('caution');
    expect(temperatureVerdict(29, { least: 18, most: 24 }, limits).tone).toBe('stop');
  });
  test('white cloth half a grade below the bench test stops the wash, and asks for the colour where none is named', () => {
    expect(clothVerdict('4', '4-5', true).tone).toBe('stop');
    expect(clothVerdict('4-5', '4-5', true).tone).toBe('ok');
    expect(clothVerdict('4', '5', false)).toMatchObject({ tone: 'stop' });
    expect(clothVerdict('4', '5', false).words).toContain('which colour');
  });
  test('while a colour is rescued the bath is never below pH 4, and above its band it is on its way', () => {
    expect(rescuePhVerdict(3.9, limits).tone).toBe('stop');
    expect(rescuePhVerdict(4.2, limits).tone).toBe('ok');
    expect(rescuePhVerdict(6.5, limits).tone).toBe('caution');
  });
  test('run-off that gets more coloured twice within five minutes stops the wash', () => {
    const earlier = [
      { runOff: 'clear', minutesAgo: 4 },
      { runOff: 'faint colour', minutesAgo: 2 },
    ] as const;
    expect(runOffVerdict('strong colour', earlier, limits).tone).toBe('stop');
    expect(runOffVerdict('faint colour', earlier.slice(0, 1), limits).tone).toBe('caution');
    expect(runOffVerdict('soil', [], limits).tone).toBe('ok');
  });
  test('a workshop that stops sooner is heeded', () => {
    const strict = { ...limits, phOff: 0.2, temperatureOffC: 2, runOffRises: 1 };
    expect(phVerdict(7.3, band, strict).tone).toBe('stop');
    expect(temperatureVerdict(26, { least: 18, most: 24 }, strict).tone).toBe('stop');
    expect(runOffVerdict('faint colour', [{ runOff: 'clear', minutesAgo: 1 }], strict).tone).toBe('stop');
  });
});
