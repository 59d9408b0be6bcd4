package org.headfall.scenarios.planning;

/** What a page of a plan draws. */
public sealed interface PlanningView permits PlanningMap, PlanningCurves, PlanningRates {}
