import { QueryClientProvider } from '@tanstack/react-query';
import { useEffect } from 'react';
import { createBrowserRouter, createPath, RouterProvider } from 'react-router';
import { newQueryClient } from '../shared/queries';
import { usePreferences } from '../shared/preferences';
import { routesFrom } from './routes';

const queryClient = newQueryClient();
const router = createBrowserRouter(routesFrom(standing));

function standing(): string | undefined {
  const { initialized, errors, location } = router.state;
  return initialized && errors === null ? createPath(location) : undefined;
}

export function App() {
  const { theme, language } = usePreferences();
  useEffect(() => {
    document.documentElement.lang = language;
    if (theme === 'system') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = theme;
  }, [theme, language]);
  return (
    <QueryClientProvider client={queryClient}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  );
}
