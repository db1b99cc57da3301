import { expect, test } from 'vitest';
import { parseTemperature, parseWindSpeed } from '../../src/domain/weather.ts';

test('reads wind in metres per second and miles per hour', () => {
  expect(parseWindSpeed('4')).toEqual({ ok: true, value: 4 });
  expect(parseWindSpeed('4 m/s')).toEqual({ ok: true, value: 4 });
  // 45 mph is 20.1 m/s (National Trust, high-winds policy, as quoted with its own conversion).
  const gust = parseWindSpeed('45 mph');
  expect(gust.ok && gust.value).toBeCloseTo(20.1, 1);
});

test.each(['F6', '4 kn', '-1', '200', ''])('refuses the wind "%s"', (text) => {
  expect(parseWindSpeed(text)).toMatchObject({ ok: false, rule: 'wind-speed' });
});

test('reads temperatures in degrees Celsius', () => {
  expect(parseTemperature('12.5')).toEqual({ ok: true, value: 12.5 });
  expect(parseTemperature('−3 °C')).toEqual({ ok: true, value: -3 });
  expect(parseTemperature('-0')).toEqual({ ok: true, value: 0 });
});

test.each(['54 F', '80', 'cold', ''])('refuses the temperature "%s"', (text) => {
  expect(parseTemperature(text)).toMatchObject({ ok: false, rule: 'temperature' });
});
