package working_test

import (
	"testing"

	"example.com/drawbar/units/working"
)

const benchFormula = "ρ_20 * (1 + α_20 * (T - 20)) * 2*L / A * 1000"

var benchValues = map[string]float64{"ρ_20": 1. / 58, "α_20": 0.00393, "T": 30, "L": 4.572, "A": 5.261}

func BenchmarkEvaluate(b *testing.B) {
	b.Run("parsed", func(b *testing.B) {
		f, err := working.ParseFormula(benchFormula)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportAllocs()
		for b.Loop() {
			_, _ = f.Evaluate(benchValues)
		}
	})
	b.Run("text", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = working.Evaluate(benchFormula, benchValues)
		}
	})
}

func BenchmarkSheet(b *testing.B) {
	b.Run("record/steps=14", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sample()
		}
	})
	s := sample()
	for name, render := range map[string]func() string{"Text": s.Text, "Markdown": s.Markdown, "HTML": s.HTML} {
		b.Run(name+"/steps=14", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				render()
			}
		})
	}
}
