/** Under which keys the answers of this folder are kept; none begins with another. */
export const peopleKeys = {
  session: () => ['session'] as const,
  sessions: () => ['sessions'] as const,
  people: () => ['people'] as const,
  accessKeys: () => ['access-keys'] as const,
  audit: () => ['audit'] as const,
};
