/** Two reference libraries that come without types. */
declare module 'hare-niemeyer' {
  const hareNiemeyer: (
    votes: Readonly<Record<string, number>>,
    seats: number,
    draw?: boolean,
  ) => Record<string, number>;

  // biome-ignore lint/style/noDefaultExport: the library exports it so
  export { hareNiemeyer as default };
}

declare module 'sainte-lague' {
  const sainteLague: (
    votes: Readonly<Record<string, number>>,
    seats: number,
    options?: { readonly draw?: boolean },
  ) => Record<string, number>;

  // biome-ignore lint/style/noDefaultExport: the library exports it so
  export { sainteLague as default };
}
