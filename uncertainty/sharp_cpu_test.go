package uncertainty
import ("testing";"context")
func BenchmarkSharpCPU(b *testing.B){
	m, c := dilutionModel()
	for _,plain:=range []bool{true,false}{
	name:="sharp"; if plain{name="plain"}
	b.Run(name,func(b *testing.B){for b.Loop(){ m.Simulate(context.Background(), c, Settings{Trials:10000,Plain:plain})}})
	}
	b.Run("law",func(b *testing.B){ v := m.values(c, mean);	g := m.gradient(c, v); for b.Loop(){ m.linearPart(g,.95)}})
}
