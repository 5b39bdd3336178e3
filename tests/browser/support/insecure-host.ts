/** A host name that is no secure context, as every address of a local network is. */
export const INSECURE_HOST = 'bakehouse.test';
