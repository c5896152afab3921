/* towershaft/towershaft.h: all of the promise, in reading order. */
#ifndef TOWERSHAFT_TOWERSHAFT_H
#define TOWERSHAFT_TOWERSHAFT_H

#include "towershaft/status.h"
#include "towershaft/study.h"
#include "towershaft/rule.h"
#include "towershaft/rate.h"
#include "towershaft/ratio.h"
#include "towershaft/size.h"
#include "towershaft/mass.h"
#include "towershaft/oil.h"
#include "towershaft/twist.h"
#include "towershaft/seize.h"
#include "towershaft/sheet.h"
#include "towershaft/start.h"
#include "towershaft/warm.h"
#include "towershaft/lines.h"
#include "towershaft/necks.h"
#include "towershaft/effects.h"
#include "towershaft/figure.h"
#include "towershaft/view.h"
#include "towershaft/solids.h"
#include "towershaft/whirl.h"
#include "towershaft/starting_file.h"
#include "towershaft/act.h"
#include "towershaft/arrange.h"
#include "towershaft/report.h"
#include "towershaft/brief.h"
#include "towershaft/place.h"
#include "towershaft/sampling.h"

#endif
