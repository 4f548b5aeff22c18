# What CountToBoardScenarioTest expects on day 9, drawn batch by batch apart from the program.
#   Rscript stuck-to-board.R       (R 4.2.2, Debian r-base-core 4.2.2.20221110-2)
#
# ln M of a stage with 0.04, of whose variance 0.26 is each stage's own (docs/models/rate-belief.md). One reference-day in the first two days,
# one a day after; the first stage was entered on day 8 by somebody who comes by every hour and calls it complete at e^(0.08 z) of it; it ended
# no later than that. The weather to come is added in squares at each quantile (docs/models/temperature.md): 1.0 day late and 0.9 early at
# 10 %. Cells are log-normal on the clock since sticking, the last stage being 10 of 26 days, with 0.12 x 1.202, in one batch
# of six by e^0.52 wider and in one narrower. Plants 3763 +- 21, after the loss 1851 +- 12; trays of 100, each plant held for 14 days; Monday begins 6 hours before a whole day
# since sticking.
set.seed(20261129)
n <- 4e6
share <- 0.26
own <- function() 0.04 * sqrt(share) * rnorm(n)
batch <- 0.04 * sqrt(1 - share) * rnorm(n)
m1 <- exp(batch + own()); m2 <- exp(batch + own()); m3 <- exp(batch + own())
entered <- pnorm(log(m1) / 0.08) - pnorm(log(m1 * (7 - 1 / 24) / 7) / 0.08)
kept <- runif(n) < entered / max(entered)
m1 <- m1[kept]; m2 <- m2[kept]; m3 <- m3[kept]
n <- sum(kept)
rated <- pmin(1 + 7 / m1, 8) + 9 / m2 + 10 / m3
cat("by rates alone:", sprintf("%.3f", quantile(rated, c(0.1, 0.5, 0.9))), "\n")

z <- qnorm((rank(rated, ties.method = "first") - 0.5) / n)
middle <- median(rated)
weather <- ifelse(z < 0, 0.9, 1.0) * z / qnorm(0.9)
ready <- middle + sign(z) * sqrt((rated - middle)^2 + weather^2)
cat("with the weather:", sprintf("%.3f", quantile(ready, c(0.1, 0.5, 0.9))), "\n")

u <- runif(n)
factor <- ifelse(u < 1 / 6, exp(-0.3 * sqrt(3)), ifelse(u < 2 / 6, exp(0.3 * sqrt(3)), 1))
part <- 10 / 26
through <- function(t) {
  whole <- 1 + part * m3 * (t - ready) / 10
  pnorm(log(pmax(whole, 1e-9)) / (part * 0.12 * 1.202 * factor) + qnorm(0.9))
}
board <- function(plants) for (week in 5:8) {
  monday <- 24 + 7 * (week - 5) - 0.25
  trays <- rbinom(n, plants, pmax(0, through(monday) - through(monday - 14))) %/% 100
  odds <- rev(cumsum(rev(tabulate(trays + 1, 41)))) / n
  for (q in c(0.9, 0.5)) {
    k <- max(which(odds >= q))
    cat("week", week, "at", q, ":", k - 1, sprintf("%.3f", odds[k]), "and", k, sprintf("%.3f", odds[k + 1]), "\n")
  }
}
cat("3763 plants\n"); board(round(rnorm(n, 3763, 21)))
cat("1851 plants\n"); board(round(rnorm(n, 1851, 12)))
