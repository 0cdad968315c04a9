import { dryForecast } from '../../core/drying/index.ts';
import type { Forecaster } from '../../ports/forecaster.ts';

/** Forecasts worked out where they are asked for. */
export const memoryForecaster: Forecaster = {
  forecast: async (scenario) => dryForecast(scenario),
  close: async () => {},
};
