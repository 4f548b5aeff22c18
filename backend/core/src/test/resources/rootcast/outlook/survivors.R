# How many plants will be alive when the batch is ready, for cases of SurvivorsTest: exact sums over counts by R's own beta
# function and hypergeometric distribution; p10 is the most plants that are alive with probability 0.9 or more.
#   Rscript survivors.R > survivors.csv                 (R 4.2.2, Debian r-base-core 4.2.2.20221110-2)
#
# The model, as docs/models/survival.md states it: the share that lives through a stage is Beta(mean, weight) of its own in
# every batch, plants alike and independent given that share.

mean.of <- c(0.95, 0.93, 0.97)
weight <- 60

# Row i + 1: the law of how many of i live through the stage.
through <- function(stage, most) {
  a <- mean.of[stage] * weight
  b <- (1 - mean.of[stage]) * weight
  t(sapply(0:most, function(n) {
    k <- 0:most
    ifelse(k > n, 0, exp(lchoose(n, pmin(k, n)) + lbeta(a + k, b + pmax(n - k, 0)) - lbeta(a, b)))
  }))
}
tell <- function(name, law) {
  law <- law / sum(law)
  count <- seq_along(law) - 1
  at.least <- rev(cumsum(rev(law)))
  cat(name, max(count[at.least >= 0.9]), max(count[at.least >= 0.5]), max(count[at.least >= 0.1]),
      sprintf("%.3f", sum(count * law)), sep = ";")
  cat("\n")
}
cat("case;p10;p50;p90;mean\n")

most <- 1050
steps <- lapply(1:3, through, most)
start <- as.numeric(0:most == most)
tell("1050 stuck", start %*% steps[[1]] %*% steps[[2]] %*% steps[[3]])

after.first <- as.vector(start %*% steps[[1]]) * (0:most <= most - 60)
tell("60 recorded lost by callus", after.first %*% steps[[2]] %*% steps[[3]])

# 210 places, 3 blanks of 40 cells looked at when callused; when rooted, 4 were recorded lost and 180 had left.
places <- 210
small <- lapply(1:3, through, places)
left <- as.vector(as.numeric(0:places == places) %*% small[[1]])
left <- left * dhyper(3, places - (0:places), 0:places, 40)
after <- matrix(left, places + 1, places + 1) * small[[2]]
after[outer(0:places, 0:places, function(i, j) i - j < 4 | j < 180)] <- 0
after <- colSums(after)
kept <- c(after[181:(places + 1)], numeric(180))
tell("sample of 40, then 4 lost and 180 shipped", kept %*% small[[3]])
