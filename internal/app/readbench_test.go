package app_test

import (
	"os"
	"path/filepath"
	"testing"

	"plait.example/internal/app"
)

// recipeTexts are the recipes that other people wrote which the reader is tested on; see the notes beside them.
func recipeTexts(b *testing.B) map[string][]byte {
	b.Helper()
	texts := map[string][]byte{}
	for _, pattern := range []string{"*/*.md", "*/*.txt"} {
		names, err := filepath.Glob(filepath.Join("../recipe/testdata", pattern))
		if err != nil {
			b.Fatal(err)
		}
		for _, name := range names {
			data, err := os.ReadFile(name)
			if err != nil {
				b.Fatal(err)
			}
			texts[name] = data
		}
	}
	if len(texts) < 60 {
		b.Fatalf("only %d texts", len(texts))
	}
	return texts
}

// BenchmarkReadRecipes reads whole recipes from bytes to JSON, weights included,
// on one core, and gives recipes a second. 167 a second are 10,000 a minute.
func BenchmarkReadRecipes(b *testing.B) {
	texts := recipeTexts(b)
	a := new(app.App)
	recipes, bytes := 0, 0
	for b.Loop() {
		for name, data := range texts {
			read, err := a.ReadRecipes(name, data)
			if err != nil {
				b.Fatal(err)
			}
			objects, err := a.RecipesJSON(name, read)
			if err != nil || len(objects) == 0 || len(read.Recipes[0].Steps) == 0 {
				b.Fatalf("%s: %d recipes, %v", name, len(objects), err)
			}
			recipes += len(objects)
			bytes += len(data)
		}
	}
	b.ReportMetric(float64(recipes)/b.Elapsed().Seconds(), "recipes/s")
	b.ReportMetric(float64(bytes)/float64(recipes), "bytes/recipe")
}

// BenchmarkReadPage reads a page of text, some 3,000 letters.
func BenchmarkReadPage(b *testing.B) {
	var page []byte
	for _, data := range recipeTexts(b) {
		if len(data) > 2800 && len(data) < 3600 && (page == nil || len(data) > len(page)) {
			page = data
		}
	}
	if page == nil {
		b.Fatal("no text of a page's length")
	}
	a := new(app.App)
	for b.Loop() {
		read, err := a.ReadRecipes("page", page)
		if err != nil || len(read.Recipes[0].Steps) < 3 {
			b.Fatalf("%+v, %v", read, err)
		}
	}
}
