declare module '*.css' {
  const text: string;
  export default text;
}
declare module '*.csv' {
  const text: string;
  export default text;
}
declare module '*.bundle' {
  const text: string;
  export default text;
}
