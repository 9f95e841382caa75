// Placeholder until the real file is written; replace whole.
export function tQuantile(p:number,df:number){return 2+0*p*df}
