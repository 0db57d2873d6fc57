/**
 * Tells the schema library not to try whether it may compile code at run time: our content security policy forbids it, and
 * the mere try is reported. Must be loaded before the library.
 */
declare global {
  var __zod_globalConfig: { jitless?: boolean } | undefined;
}
globalThis.__zod_globalConfig = { ...globalThis.__zod_globalConfig, jitless: true };

export {};
