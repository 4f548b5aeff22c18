import { request, type FullConfig } from '@playwright/test';

/** Where the cookie of the manager's door is kept for the stories that are not about signing in. */
export const ENTERED = 'target/entered.json';

/** Goes in by the manager's door once; every story then begins signed in, unless it says otherwise. */
export default async function enter(config: FullConfig): Promise<void> {
  const { baseURL } = config.projects[0]?.use ?? {};
  const context = await request.newContext(baseURL === undefined ? {} : { baseURL });
  const answer = await context.post('/api/session/door', { data: { door: 'manager' } });
  if (answer.status() !== 204)
    throw new Error(`the manager's door answered ${answer.status()}: ${await answer.text()}`);
  await context.storageState({ path: ENTERED });
  await context.dispose();
}
