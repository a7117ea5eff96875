/** Style sheets are imported for their effect; the bundler turns them into files of their own. */
declare module '*.css';
