/** The version of this trainer, as records name it; put in when the page is built. */
export const APP_VERSION = String(import.meta.env.APP_VERSION);
