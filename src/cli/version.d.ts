/** Put in by the build, from package.json. */
declare const __HINDTRACK_VERSION__: string;
