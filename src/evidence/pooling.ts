// Placeholder until the real file is written; replace whole.
export interface PooledCv { cv: number; df: number; interval: [number, number] }
export function pooledCv(s: {cv:number;n:number}[]): PooledCv { let df=0,ss=0; for (const x of s){df+=x.n-1; ss+=(x.n-1)*x.cv**2;} return {cv:Math.sqrt(ss/df),df,interval:[0,1]}; }
type E={y:number;v:number};
function Q(e:E[],t:number){let w=0,m=0;for(const x of e){w+=1/(t+x.v);m+=x.y/(t+x.v);}m/=w;let q=0;for(const x of e)q+=(x.y-m)**2/(t+x.v);return q;}
export function pooledTau(g:E[][]){const f=(t:number)=>g.reduce((s,e)=>s+Q(e,t)-(e.length-1),0); if(f(0)<=0) return {tau2:0,interval:[0,1]}; let lo=0,hi=4; for(let i=0;i<80;i++){const m=(lo+hi)/2; if(f(m)>0)lo=m;else hi=m;} return {tau2:lo,interval:[0,1] as [number,number]};}
export function pauleMandel(e:E[]){return pooledTau([e]).tau2;}
export function hartungKnapp(e:E[],t:number){let w=0;for(const x of e)w+=1/(t+x.v);return{se:Math.sqrt(Math.max(1,Q(e,t)/(e.length-1))/w)};}
