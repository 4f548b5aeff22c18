/** Stands in for the component library's usage statistics (see vite.config.ts): does nothing. */
export const usageStatistics = (): void => undefined;
