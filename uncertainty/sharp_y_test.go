package uncertainty
import ("testing";"fmt";"math";"minim/uncertainty/portable")
func TestSharpY(t *testing.T) {
	m, y := sumOf(Normal{3, 2})
	mc:=simulate(t,m,y,Settings{Trials:10000})
	fmt.Println((mc.Lower-(3-2*1.9599639845400545))/2,(mc.Upper-(3+2*1.9599639845400545))/2, mc.ShortestLower,mc.ShortestUpper)
	one := PlusMinus(math.Sqrt(3))
	m, y = sumOf(one, one, one, one)
	mc=simulate(t,m,y,Settings{Trials:10000})
	fmt.Println(mc.Lower,mc.Upper)
	// exact: irwin-hall 4: F = z^4/24 (z in units of width) = .025
	z:=math.Sqrt(math.Sqrt(.025*24))
	fmt.Println((mc.Lower-(-4*math.Sqrt(3)+z*2*math.Sqrt(3)))/2)
	for nu:=1.0;nu<45;nu++{ for x:=-30.0;x<30;x+=.37{ if d:=math.Abs(studentBelow(x,nu)-studentCDF(x,nu));d>2e-15{t.Error(nu,x,d)}}}
	_=portable.Atan
}
