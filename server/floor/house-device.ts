import { idFromBytes, ID_BYTES } from '../../shared/ids.ts';

/** The device of what the server itself says: all zeros, which no random id is. */
export const HOUSE_DEVICE_ID = idFromBytes(new Uint8Array(ID_BYTES));
