import fc from "fast-check";

/**
 * On a build machine the properties are tried with the same cases every time, so that a change is judged by itself;
 * everywhere else with new ones. What they find becomes a mend, and a test of its own.
 */
if (process.env.CI !== undefined) fc.configureGlobal({ seed: 20_261_125 });
