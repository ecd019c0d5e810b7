package law
import ("testing";"fmt";"math";"math/rand/v2";"sort";"time";"minim/uncertainty/portable")
func TestX(t *testing.T){
 r:=rand.New(rand.NewPCG(1,2))
 for c:=0;c<4;c++{
 s:=new(Sum)
 var draw []func()float64
 if c!=1 {s.Normal(0.3);draw=append(draw,func()float64{return .3*r.NormFloat64()})}
 s.Flat(1); draw=append(draw,func()float64{return 2*r.Float64()-1})
 if c>=2 {s.Flat(.4);s.Flat(.4); s.Gamma(2,.3); s.Gamma(3,-.2)
  draw=append(draw,func()float64{return .4*(2*r.Float64()-1)},func()float64{return .4*(2*r.Float64()-1)},
  func()float64{return -.3*(math.Log(r.Float64())+math.Log(r.Float64()))-.6},
  func()float64{return .2*(math.Log(r.Float64())+math.Log(r.Float64())+math.Log(r.Float64()))+.6})}
 if c==3 { s.CutOff(func(x float64)float64{return .5+portable.Atan(x/.2)/math.Pi},.2,8); draw=append(draw,func()float64{return max(-8,min(8,.2*math.Tan(math.Pi*(r.Float64()-.5))))})}
 t0:=time.Now()
 l:=s.Law()
 el:=time.Since(t0)
 t0=time.Now(); l=s.Law(); el2:=time.Since(t0)
 n:=2000000
 v:=make([]float64,n)
 for i:=range v{for _,d:=range draw{v[i]+=d()}}
 sort.Float64s(v)
 fmt.Println(c,len(l.through),el,el2,l.through[len(l.through)-1]-1)
 for _,p:=range []float64{.001,.025,.2,.5,.7,.975,.999}{ q:=v[int(p*float64(n))]; fmt.Printf("  %v z=%.2f  %v %v\n",p,(l.Below(q)-p)/math.Sqrt(p*(1-p)/float64(n)),q,l.At(p))}
 }
 for x:=-50.0;x<50;x+=.37{ if d:=math.Abs(portable.Atan(x)-math.Atan(x)); d>3e-16{t.Error(x,d)}}
}
