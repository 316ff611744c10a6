package app

import (
	"context"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

func plan(ctx context.Context, p *practical.Practical, o PlanOptions) (*timeplan.Plan, error) {
	return nil, nil
}
