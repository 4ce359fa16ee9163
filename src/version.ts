/** Version of the library, echoed in files that carry its results. */
export const VERSION = '0.1.0';
