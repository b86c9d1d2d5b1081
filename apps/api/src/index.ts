import type { apiRoutes } from './http/api-routes.ts';

/** The routes, for a typed client: `hc<ApiRoutes>('/')`. */
export type ApiRoutes = typeof apiRoutes;
