// Values the build puts in.

/** Name of the core's file, beside the scripts of page and worker. */
declare const __CORE__: string;
/** Name of the worker's file, beside the page's script. */
declare const __WORKER__: string;
/** Name of the file with all example jobs, beside the page's script. */
declare const __EXAMPLES__: string;
declare const __VERSION__: string;
declare const __PRECACHE__: string[];
