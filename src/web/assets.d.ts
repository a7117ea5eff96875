/** Style sheets are imported for their effect; the bundler turns them into files of their own. */
declare module '*.css';

/** The address of a script that the build makes to run beside the page. */
declare module '*?worker&url' {
  const address: string;

  export = address;
}
