/**
 * Stands in for the component library's search for a look that we do not use (see vite.config.ts). It reads every rule of
 * every style sheet for each kind of component that appears, and has the whole page styled anew each time.
 */
export const LumoInjectionMixin = <C>(component: C): C => component;

/** Where the look of a component is set: for us the page, as none of ours stands in another's shadow. */
export const findRoot = (): Document => document;
