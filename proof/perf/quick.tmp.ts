import { readFileSync } from 'node:fs';
import { applyEdit, moveHere, openSession } from '@oddwheel/build/session';
const TEXT=readFileSync(new URL('../../examples/marsh-hauler/build.json',import.meta.url),'utf8');
const r=openSession(TEXT,{cache:true}); if(!r.ok) throw 1; let s=r.session;
const cpu=()=>{const u=process.cpuUsage();return (u.user+u.system)/1000};
const run=(name:string,n:number,f:(k:number)=>void)=>{const ts:number[]=[];const c0=cpu();for(let k=0;k<n;k++){const a=performance.now();f(k);ts.push(performance.now()-a)};ts.sort((a,b)=>a-b);console.log(name,'cpu',((cpu()-c0)/n).toFixed(2),'median',ts[n>>1]!.toFixed(2),'min',ts[0]!.toFixed(2),'max',ts[n-1]!.toFixed(2))};
const what=process.argv[2]??'all';
if(what==='all'||what==='move'){const g=s.assessment.gears.find(x=>x.id===s.here.gear)!; run('move',300,k=>{s=moveHere(s,{roadSpeed:g.speedAtIdle.value+(g.speedAtRedline.value-g.speedAtIdle.value)*k/299})});}
if(what==='all'||what==='edit')run('edit middle',60,k=>{const e=applyEdit(s,[{op:'set',at:'/path/stages/chain-1/teeth/driver',value:k%2?16:17}],'not yet');if(!e.ok)throw 1;s=e.session});
if(what==='all'||what==='ends')run('edit ends',8,k=>{const e=applyEdit(s,[{op:'set',at:'/path/stages/chain-1/teeth/driver',value:k%2?16:17}]);if(!e.ok)throw 1;s=e.session});
